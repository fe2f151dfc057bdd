"""Steps as the lines of a ``method``."""

from collections.abc import Iterator

from demould.mise.figure import Figure, Worked
from demould.mise.method import Hands, Method, Need, Stand, Step
from demould.mise.tree import Block
from demould.mise.write_quantity import write_amount, write_figure, write_origin
from demould.mise.write_tree import block, joined


def write_method(method: Method) -> Block | None:
    """A method as a block, or None where it has no step."""
    width = max((len(step.key) for step in method), default=0)
    return block(f"{step.key:{width}}  {_rest(step)}" for step in method)


def _rest(step: Step) -> str:
    """Everything after the key: how long, then the rules, then the words."""
    needs = ", ".join(_need(need) for need in step.needs)
    return joined(
        (
            ", ".join(_times(step)),
            "each round" if step.each_round else None,
            f"who can {step.skill}" if step.skill else None,
            "all hands" if step.hands and step.hands.all_hands else None,
            *step.tools,
            step.place,
            f"needs {needs}" if needs else None,
            _figure("used up within", step.within),
            _figure("hold", step.hold),
            _figure("core", step.core),
            *step.remarks,
        )
    )


def _figure(words: str, figure: Figure | None) -> str | None:
    return f"{words} {write_figure(figure)}" if figure else None


def _need(need: Need) -> str:
    return f"{need.component} {need.step}" if need.step else need.component


def _times(step: Step) -> Iterator[str]:
    if step.hands:
        yield " and ".join(_hands(step.hands))
    if step.stand:
        yield f"stands {_stand(step.stand)}"
    if step.roads:
        yield " or ".join(
            f"{road.place} {write_figure(road.least)}" for road in step.roads
        )


def _stand(stand: Stand) -> str:
    least = write_figure(stand.least)
    return f"{least} to {write_figure(stand.most)}" if stand.most else least


def _hands(hands: Hands) -> Iterator[str]:
    if hands.fixed:
        yield write_figure(hands.fixed)
    if hands.per_piece:
        yield _per_piece(hands.per_piece)
    if hands.per_portion:
        yield _each(hands.per_portion, "a portion")


def _each(figure: Figure, words: str) -> str:
    return f"{write_amount(figure)} {words} {write_origin(figure)}".strip()


def _per_piece(figure: Figure) -> str:
    """``15 min per 24`` as it was written, where it was written so."""
    match figure.origin:
        case Worked(parts=(minutes, pieces)) if pieces.unit == "pieces":
            if figure.value == minutes.value / pieces.value:
                number = write_amount(pieces).removesuffix(" pieces")
                return f"{write_figure(minutes)} per {number}"
    return _each(figure, "a piece")
