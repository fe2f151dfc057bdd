"""How large a shape is: volume, area, sections, its skin and the gap between two."""
