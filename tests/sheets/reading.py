"""A page as a reader sees it: its heads, a table under a head, its lines."""

from demould.sheets.page import Block, Head, Lines, Table


def heads(blocks: tuple[Block, ...]) -> list[str]:
    return [str(block.text) for block in blocks if isinstance(block, Head)]


def under(blocks: tuple[Block, ...], head: str) -> tuple[Block, ...]:
    """Give the blocks from a head to the next one."""
    texts = [str(one.text) if isinstance(one, Head) else "" for one in blocks]
    first = texts.index(head) + 1
    rest = blocks[first:]
    ends = [at for at, block in enumerate(rest) if isinstance(block, Head)]
    return rest[: ends[0]] if ends else rest


def table_in(blocks: tuple[Block, ...]) -> Table:
    """Give the only table there is."""
    (table,) = (block for block in blocks if isinstance(block, Table))
    return table


def rows(table: Table) -> list[list[str]]:
    return [[str(cell.text) for cell in row] for row in table.rows]


def lines(blocks: tuple[Block, ...]) -> list[str]:
    return [
        str(line)
        for block in blocks
        if isinstance(block, Lines)
        for line in block.lines
    ]


def loud(blocks: tuple[Block, ...]) -> list[str]:
    return lines(
        tuple(block for block in blocks if isinstance(block, Lines) and block.loud)
    )
