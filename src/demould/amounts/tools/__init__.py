"""What the kitchen takes at once: moulds, bowls, trays."""
