"""The search for a plan."""
