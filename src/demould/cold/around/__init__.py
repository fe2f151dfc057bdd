"""What is around a piece: air, films, the load it came with, moisture."""
