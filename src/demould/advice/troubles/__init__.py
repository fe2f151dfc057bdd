"""It went wrong: why, by this batch's own numbers, and what to do."""
