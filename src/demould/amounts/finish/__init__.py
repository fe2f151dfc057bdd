"""What goes over a piece: dipped, poured, sprayed."""
