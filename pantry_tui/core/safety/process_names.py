"""By which words a row of the process tables is found, and by which it is not."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from functools import lru_cache

_STOP = frozenset({"of", "the", "or", "a", "an"})
#: One word for all that puts two foods into one jar.
_WITH = frozenset({"with", "and"})


@lru_cache(maxsize=4096)
def name_key(text: str) -> tuple[str, ...]:
    """A food's name without word order, brackets and plurals; "in" stays, it can mean much, and so
    does whether something is put up with it."""
    words = re.findall(r"[^\W_]+", text.partition("(")[0].casefold())
    found = [_single(word) for word in words if word not in _STOP | _WITH]
    return tuple(sorted((*found, *({"+"} if _WITH.intersection(words) else ()))))


def ends_of(name: str) -> Iterable[tuple[str, ...]]:
    """Keys of the words that may stand last in a name: its last one, or any of a name that is
    turned about ("Cherries, whole")."""
    words = re.findall(r"[^\W_]+", name.partition("(")[0].casefold())
    return (("", _single(word)) for word in (words if "," in name else words[-1:]))


def ends_alike(text: str, names: Collection[tuple[str, ...]]) -> bool:
    """Whether a typed name ends as a name of the row may: pie cherries are no cherry pie. `names`
    hold the `ends_of` each."""
    return any(end in names for end in ends_of(text))


def _single(word: str) -> str:
    word = re.sub(r"(o|ch|sh)es$", r"\1", re.sub(r"(?<=\w\w)ies$", "y", word))
    return re.sub(r"(?<=[^sui])s$", "", word)
