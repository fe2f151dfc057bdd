"""Drawings to scale, in millimetres: one source for the page and the paper."""
