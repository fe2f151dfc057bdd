"""What it is made of, and how that behaves."""
