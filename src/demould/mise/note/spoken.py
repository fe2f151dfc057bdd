"""Which ingredients some words of a method name."""

from collections.abc import Mapping

from demould.larder.trade_words import language_of
from demould.mise.note.building import id_of
from demould.mise.note.tags import tags_of
from demould.mise.note.tokens import tokens_of


def ingredients_in(text: str) -> Mapping[str, str]:
    """The id of each ingredient that a text names, and the words that do.

    >>> dict(ingredients_in("cold cream, then the gelatin"))
    {'cream_35': 'cream', 'gelatin_200': 'gelatin'}
    """
    tokens = tokens_of(text)
    language = language_of(one.plain for one in tokens if one.kind == "word")
    found: dict[str, str] = {}
    for tag in tags_of(tokens, language):
        if tag.kind != "ingredient" or tag.guessed:
            continue
        id_ = id_of(tag.may_be("ingredient") or tag.plain)
        if id_ is not None:
            found.setdefault(id_, text[tag.start : tag.end])
    return found
