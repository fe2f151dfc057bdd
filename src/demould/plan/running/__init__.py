"""A plan in use: what follows what, and how far it bends."""
