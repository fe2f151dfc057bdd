"""Which kind of component a part of a note is, by its name, else by what is in it."""

from demould.larder.read import ingredient
from demould.mise.note.noted import NotedPart

_TOLD_BY: tuple[tuple[frozenset[str], str], ...] = (
    (frozenset({"flour_wheat"}), "sponge"),
    (frozenset({"flour_rye"}), "sponge"),
    (frozenset({"pectin_nh_use"}), "pectin centre"),
    (frozenset({"agar_powder"}), "agar centre"),
    (frozenset({"wafer_flakes_wheat"}), "crisp base"),
)


def kind_of(part: NotedPart) -> str:
    """The kind its name tells, narrowed or found by its ingredients; "" where neither.

    Gelatin and cream with white chocolate and no egg is a whipped ganache; with dark
    chocolate a chocolate mousse; with egg yolk a bavarois; else a fruit mousse.
    """
    inside = {line.ingredient for line in part.lines if line.ingredient}
    categories = {ingredient(one).category for one in inside}
    gelatin = any(one.startswith("gelatin") for one in inside)
    cream = any(one.startswith("cream") for one in inside)
    told = part.kind if part.kind != "component" else ""
    if told == "fruit mousse" and "chocolate" in categories:
        return "chocolate mousse"
    if told == "pectin centre" and not any(one.startswith("pectin") for one in inside):
        return (
            "agar centre"
            if "agar_powder" in inside
            else "fruit gel"
            if gelatin
            else told
        )
    if told:
        return told
    for wanted, kind in _TOLD_BY:
        if wanted <= inside:
            return kind
    if "cocoa_butter" in inside and categories <= {"chocolate", "fat"}:
        return "thin dip"
    if cream and "chocolate" in categories and "egg_yolk" not in inside:
        white = inside & {"white", "white_couv_35"}
        return "whipped ganache" if white else "chocolate mousse"
    if cream and gelatin:
        return "bavarois" if "egg_yolk" in inside else "fruit mousse"
    if gelatin and "glucose_de40" in inside:
        return "mirror glaze"
    return "fruit gel" if gelatin else ""
