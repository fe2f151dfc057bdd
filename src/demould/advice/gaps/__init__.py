"""What a formula does not say: what is taken, how far it moves, what settles it."""
