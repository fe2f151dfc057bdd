"""What lies where in a mould: heights of the parts, walls, what one piece holds."""
