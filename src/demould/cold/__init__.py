"""How fast it freezes and thaws."""
