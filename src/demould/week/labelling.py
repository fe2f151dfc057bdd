"""The drafts of the labels of a week's orders."""

from collections.abc import Iterable
from datetime import date

from demould.care.label import Label, Said, label_of
from demould.larder.labels import rule_sets
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.week.making import Making

RULES = "eu"


def labels_of(
    folder: Folder, makings: Iterable[Making], today: date
) -> tuple[Label, ...]:
    """Draft one label a dessert and variant, nothing said by anybody yet."""
    once = {(making.order.dessert, making.order.variant): making for making in makings}
    return tuple(
        label_of(
            making.amounts.dessert,
            variant,
            making.amounts.piece,
            folder.larder,
            find_in(folder.larder),
            rule_sets()[RULES],
            Said(),
            today,
        )
        for (_, variant), making in once.items()
    )
