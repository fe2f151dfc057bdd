"""The CP-SAT solver, which nothing else knows of."""
