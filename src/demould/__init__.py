"""From a cook's written formula to the week: how much, how long, when, by whom."""

__version__ = "0.1.0"
