"""Something else instead of an ingredient: what is held, what moves, what changes."""
