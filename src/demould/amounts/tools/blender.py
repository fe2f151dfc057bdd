"""Whether a blender catches it: enough in the jug, or air goes in."""

from demould.mise.figure import Figure
from demould.mise.kitchen import Tool
from demould.mise.words import Words


def blends(mass: Figure, tool: Tool) -> tuple[Words, ...]:
    """Say what to do where a blender would whip air; nothing where it catches.

    >>> from demould.mise.figure import Figure
    >>> stick = Tool(key="blender", least=Figure(name="", value=300, unit="g"))
    >>> str(blends(Figure(name="", value=150, unit="g"), stick)[0])
    '150 g are under the 300 g that the blender catches: take a narrower jug'
    """
    if tool.least is None or mass.value >= tool.least.value:
        return ()
    return (
        Words(
            "{mass:.0f} g are under the {least:.0f} g that the {tool} catches: take a"
            " narrower jug",
            mass=mass.value,
            least=tool.least.value,
            tool=tool.key,
        ),
        Words("make {least:.0f} g and keep what is over", least=tool.least.value),
    )
