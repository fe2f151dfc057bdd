"""What is asked: steps, waits, limits, hours and people, and their faults."""
