"""When, and by whom."""
