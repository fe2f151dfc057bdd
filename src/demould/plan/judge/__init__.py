"""Whether a plan keeps every promise, worked out again without the solver."""
