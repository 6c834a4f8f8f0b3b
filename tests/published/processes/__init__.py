"""Tested canning processes, typed in by hand under the publication that they were read in.

One line a food, packs, jars and canner, as a published table has it:

    food | packs | jars | canner | 1000 35, 3000 40, 6000 45, up 50

Each cell is a band: its highest altitude in feet (`up`: the band is open), then minutes, or minutes
at psi. A band begins one foot above the one before it, the first at 0; `8001-10000 40` says where
it begins. `20@6/15@11` are two processes of one band, each a pair of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tests.published.processes import fruit, meat_and_soup, sweet_and_sour, tomatoes, vegetables

#: Minutes and psi; psi None in boiling water.
Pair = tuple[int, int | None]


@dataclass(frozen=True)
class Band:
    """One published cell: for all of these packs and jars, from `low` to `high` feet."""

    publication: str
    food: str
    pack: str
    jar: str
    canner: str
    low: int
    high: int | None
    pairs: frozenset[Pair]


def _pair(text: str) -> Pair:
    minutes, _, psi = text.partition("@")
    return int(minutes), int(psi) if psi else None


def _cells(text: str) -> Iterator[tuple[int, int | None, frozenset[Pair]]]:
    begins = 0
    for cell in text.split(","):
        edge, figures = cell.split()
        low, _, high = edge.rpartition("-")
        first = int(low) if low else begins
        last = None if high == "up" else int(high)
        yield first, last, frozenset(map(_pair, figures.split("/")))
        begins = (last or 0) + 1


def bands() -> Iterator[Band]:
    """Every published cell, one for each pack and jar that it is printed for."""
    for module in (tomatoes, fruit, sweet_and_sour, vegetables, meat_and_soup):
        for publication, block in module.TYPED.items():
            for line in block.strip().splitlines():
                food, packs, jars, canner, cells = (part.strip() for part in line.split("|"))
                for low, high, pairs in _cells(cells):
                    for pack in packs.split():
                        for jar in jars.split():
                            yield Band(publication, food, pack, jar, canner, low, high, pairs)
