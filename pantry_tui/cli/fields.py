"""How a verb declares its arguments: one field an argument, typed as the verb receives it.

A reader of our own and not argparse, which costs 9 ms to load and build where a whole bare script
takes 22, reads `-5F` as a flag, and takes no further word behind a flag.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import cast

from pantry_tui.errors import BadInput


class Field:
    """One argument. Without `flags` it is a word that stands by its order; `old` flags are still
    understood and shown nowhere. `bare`: a flag without a value; `many`: several words; `joined`:
    they make one text; `greedy`: a flag takes all words up to the next flag."""

    __slots__ = (
        "about", "bare", "flags", "greedy", "joined", "many", "meta", "needed", "old", "read"
    )  # fmt: skip

    def __init__(
        self,
        about: str,
        meta: str = "",
        flag: str = "",
        *,
        old: tuple[str, ...] = (),
        needed: bool = False,
        bare: bool = False,
        many: bool = False,
        joined: bool = False,
        greedy: bool = False,
        read: Callable[[str], object] = str,
    ) -> None:
        self.about, self.meta, self.old = about, meta, old
        self.flags = (flag, *old) if flag else ()
        self.needed, self.bare, self.many = needed, bare, many
        self.joined, self.greedy, self.read = joined, greedy, read

    def value(self, typed: Sequence[str]) -> object:
        """What the verb receives for the words typed. Raises BadInput."""
        if self.bare:
            return bool(typed)
        if self.joined:
            return " ".join(typed)
        if self.many:
            return tuple(self.read(word) for word in typed)
        return self.read(typed[0]) if typed else None


def whole(text: str) -> int:
    """("12", "1,200") -> 12, 1200, of at most six digits. Raises BadInput."""
    plain = text
    if not text.isdigit():
        from pantry_tui.core.amounts import in_digits

        plain = in_digits(text)
    if not (plain.isascii() and plain.isdigit() and len(plain) <= 6):
        raise BadInput(f"{text[:40]!r} is no whole number: write digits alone, like 3.")
    return int(plain)


# Each of these makes a field and is typed as the value that is read from it.


def word(about: str, meta: str = "") -> str:
    """One word that must be there."""
    return cast("str", Field(about, meta, needed=True))


def maybe(about: str, meta: str = "") -> str | None:
    """One word, or none."""
    return cast("str | None", Field(about, meta))


def maybe_whole(about: str, meta: str = "") -> int | None:
    """One whole number, or none."""
    return cast("int | None", Field(about, meta, read=whole))


def words(about: str, meta: str = "") -> str:
    """One or more words, as one text."""
    return cast("str", Field(about, meta, needed=True, many=True, joined=True))


def maybe_words(about: str, meta: str = "") -> str:
    """The same; "" for none."""
    return cast("str", Field(about, meta, many=True, joined=True))


def each(about: str, meta: str = "", *, needed: bool = False) -> tuple[str, ...]:
    """Several words, one by one."""
    return cast("tuple[str, ...]", Field(about, meta, many=True, needed=needed))


def flag(name: str, about: str, *, old: tuple[str, ...] = ()) -> bool:
    """A flag that is there or not."""
    return cast("bool", Field(about, flag=name, old=old, bare=True))


def option(name: str, meta: str, about: str, *, old: tuple[str, ...] = ()) -> str | None:
    """A flag with a text."""
    return cast("str | None", Field(about, meta, name, old=old))


def number(name: str, meta: str, about: str) -> int | None:
    """A flag with a whole number."""
    return cast("int | None", Field(about, meta, name, read=whole))


def needed(name: str, meta: str, about: str, *, old: tuple[str, ...] = ()) -> str:
    """A flag with a text that must be there."""
    return cast("str", Field(about, meta, name, old=old, needed=True))


def repeated(name: str, meta: str, about: str) -> tuple[str, ...]:
    """A flag that may be given several times."""
    return cast("tuple[str, ...]", Field(about, meta, name, many=True))


def several(name: str, meta: str, about: str) -> tuple[str, ...]:
    """A flag that takes all words up to the next flag."""
    return cast("tuple[str, ...]", Field(about, meta, name, many=True, greedy=True))
