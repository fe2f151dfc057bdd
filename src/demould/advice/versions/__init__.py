"""What changed between two versions of a dessert, and what that does."""
