"""A component against what is usual for its kind, and what would bring it inside."""
