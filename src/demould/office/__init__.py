"""What to buy, what is in the house, what it costs, what to charge, what to use up."""
