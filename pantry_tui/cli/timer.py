"""The kitchen timer of a process."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, maybe_words, word
from pantry_tui.cli.verb import Verb

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.timer import TimerRow


class Timers(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import timer
        from pantry_tui.services.output import jsonable

        with call.pantry() as p:
            rows = timer.running(p)
        return call.answer(rows, jsonable.plain, _lines)


def _lines(rows: Sequence[TimerRow]) -> list[str]:
    from pantry_tui.core.text import clean

    if not rows:
        return ["Nothing is timed: `pantry-tui timer start CODE`."]
    return [
        f"{one.code} {clean(one.food)}: "
        + ("the pressure is down" if one.down else f"{one.left} of {one.minutes} minutes left")
        + (f" at {one.psi:g} psi" if one.psi is not None else "")
        + (f". {one.unsure}" if one.unsure else "")
        for one in rows
    ]


class Start(Verb):
    code: str = word("7C")
    minutes: str = maybe_words("25 min 11 psi; else as published for its record")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import timer

        return call.done(lambda p: timer.start(p, self.code, self.minutes))


class Drop(Verb):
    code: str = word("7C")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import timer

        return call.done(lambda p: timer.drop(p, self.code))


class Finish(Verb):
    code: str = word("7C")
    early: bool = flag("--early", "it was ended before its time: record what it had")
    whole: bool = flag("--whole", "it ran for all of its time by another clock than this one")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import timer

        return call.done(lambda p: timer.done(p, self.code, self.early, self.whole))


class Cancel(Verb):
    code: str = word("7C")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import timer

        return call.done(lambda p: timer.cancel(p, self.code))
