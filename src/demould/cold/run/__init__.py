"""Heat through the cells, step after step."""
