"""A piece and its air as a machine writes them, and the answer it gets."""
