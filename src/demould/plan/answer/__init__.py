"""What is answered: when, by whom, and what it costs; or that there is no plan."""
