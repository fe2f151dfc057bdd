"""What can be seen at once: limits no plan gets past, without a search."""
