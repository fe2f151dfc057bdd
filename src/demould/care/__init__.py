"""Who must not eat it, what must be kept, what is printed on it. It advises, it never certifies."""
