"""Larder entries made up for a test."""

from typing import Any

from demould.larder.read import ingredient
from demould.mise.figure import Figure
from demould.mise.own_larder import Stocked


def stocked(key: str, **said: Any) -> Stocked:
    """Give an entry like cream, with what a test says of it."""
    return Stocked(key=key, ingredient=ingredient("cream_35"), **said)


def g(value: float) -> Figure:
    return Figure(name="grams", value=value, unit="g")


def days(value: float) -> Figure:
    return Figure(name="days", value=value * 1440, unit="min")
