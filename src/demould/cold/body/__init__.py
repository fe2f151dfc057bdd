"""What a piece is made of, as cells: outlines, cuts, links, skin."""
