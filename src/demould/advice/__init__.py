"""Will it work, and if not, what to do."""
