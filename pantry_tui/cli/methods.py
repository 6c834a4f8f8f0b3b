"""The ways to keep what there is too much of."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import option, words
from pantry_tui.cli.verb import Verb

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.methods import Way


class Methods(Verb):
    food: str = words("what it is and how much: 9 lb beetroot, a bushel of apples")
    altitude: str | None = option("--altitude", "4500ft", "else your store's, else 1,000 ft")

    def run(self, call: Call) -> int:
        from pantry_tui.core.amounts import read_altitude
        from pantry_tui.reference.tables import load_tables
        from pantry_tui.services.batchwork.methods import methods

        if call.path.exists():
            with call.pantry() as p:
                typed, degree = self.altitude, p.bare_degree
                height = read_altitude(typed, degree) if typed else p.altitude_ft
                found = methods(p.tables, self.food, p, height)
        else:
            height = read_altitude(self.altitude) if self.altitude else None
            found = methods(load_tables(), self.food, None, height)
        return call.answer(found, lambda ways: [way.as_data() for way in ways], _lines)


def _lines(ways: Sequence[Way]) -> list[str]:
    from pantry_tui.core.text import clean
    from pantry_tui.services.batchwork.methods import told

    return [
        "  " + clean(line) if line.startswith("  ") else clean(line)
        for way in ways
        for line in told(way)
    ]
