"""How it is told that a process was too little, and which word in the record would settle it."""

from __future__ import annotations

from collections.abc import Sequence

_WHICH = ("form", "pack", "jar", "canner")


def unsaid(short: Sequence[tuple[str, ...]], enough: Sequence[tuple[str, ...]]) -> str:
    """What the record would have to say, where another reading of it is enough."""
    if not enough:
        return ""

    def differing(one: tuple[str, ...], other: tuple[str, ...]) -> list[int]:
        return [n for n in range(len(_WHICH)) if one[n] != other[n]]

    nearest = [(one, min(enough, key=lambda other: len(differing(one, other)))) for one in short]
    one, other = min(nearest, key=lambda pair: len(differing(*pair)))
    which = differing(one, other)
    needs, suits = zip(*(_told(one[n], other[n]) for n in which), strict=True)
    said = " ".join(f"{_WHICH[n]}={_quoted(suits[k])}" for k, n in enumerate(which))
    return f" ({', '.join(needs)}); it is enough for {', '.join(suits)}: if so, say {said}"


def _told(one: str, other: str) -> tuple[str, str]:
    """Two values without the words that both begin with."""
    mine, theirs = one.split(), other.split()
    while len(mine) > 1 and len(theirs) > 1 and mine[0] == theirs[0]:
        mine, theirs = mine[1:], theirs[1:]
    return " ".join(mine), " ".join(theirs)


def _quoted(text: str) -> str:
    return f'"{text}"' if " " in text else text


def pair(minutes: float | None, psi: float | None) -> str:
    """("25 minutes at 11 psi"), without what is not known."""
    time = "" if minutes is None else f"{minutes:g} minutes"
    return time if psi is None else f"{time} at {psi:.3g} psi".removeprefix(" at ")
