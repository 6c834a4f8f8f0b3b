"""Empty jars, lids and loans."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import whole, word, words
from pantry_tui.cli.verb import Verb

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.jars import JarRow


class Jars(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import jars
        from pantry_tui.services.output import jsonable

        with call.pantry() as p:
            rows = jars.jars(p)
        return call.answer(rows, jsonable.plain, _lines)


def _lines(rows: Sequence[JarRow]) -> list[str]:
    from pantry_tui.core.text import clean

    if not rows:
        return ["Nobody counted jars yet: `pantry-tui jars count pint 40`."]
    lines = []
    for one in rows:
        if one.size == "lids":
            lines.append(f"lids: {one.empty} new")
            continue
        lent = "".join(f", {count} with {clean(who)}" for who, count in one.lent.items())
        lines.append(f"{one.size} jars: {one.empty} empty, {one.in_use} in use{lent}")
    return lines


class Count(Verb):
    size: str = word("half-pint, pint, quart, half-gallon, or lids")
    number: str = word("how many stand empty, or are new", "N")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import jars

        number = whole(self.number)
        return call.done(lambda p: jars.count(p, self.size, number))


class Lend(Verb):
    size: str = word("half-pint, pint, quart ...")
    number: str = word("how many", "N")
    to: str = words("to whom")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import jars

        number = whole(self.number)
        return call.done(lambda p: jars.lend(p, self.size, number, self.to))


class Back(Verb):
    size: str = word("half-pint, pint, quart ...")
    number: str = word("how many", "N")
    who: str = words("from whom")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import jars

        number = whole(self.number)
        return call.done(lambda p: jars.back(p, self.size, number, self.who))
