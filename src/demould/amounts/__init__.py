"""How much: volumes, grams, pieces, factors, rounds, finish, spares."""
