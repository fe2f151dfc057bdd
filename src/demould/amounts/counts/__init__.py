"""How many pieces, how much of each component, what goes on the scales."""
