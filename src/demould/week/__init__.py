"""All of it together: one section a question, one page for the wall."""
