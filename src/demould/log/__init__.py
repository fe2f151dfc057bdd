"""What happened, and what it teaches: read from the entries, nothing else."""
