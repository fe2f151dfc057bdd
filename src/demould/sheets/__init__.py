"""What gets read: frozen content, laid out by the doors."""
