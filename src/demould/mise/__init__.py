"""What is set out: the types that text becomes, and the readers and writers between."""
