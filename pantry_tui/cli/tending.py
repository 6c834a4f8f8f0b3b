"""The small jobs of what is in store."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, maybe_words, option, word
from pantry_tui.cli.verb import Act, Verb
from pantry_tui.services.output import jsonable


class Jobs(Verb):
    within: str | None = option("--within", "7d", "also what falls due by then")
    draw: bool = flag("--draw", "what ferments, cures or dries as lines of time: day n of m")

    def run(self, call: Call) -> int:
        if self.draw:
            return self._draw(call)
        from pantry_tui.cli.printing.stock import jobs
        from pantry_tui.core.dates import read_span
        from pantry_tui.services.batchwork import tending

        within = read_span(self.within) if self.within else 0
        with call.pantry() as p:
            found = tending.jobs(p, within)
        return call.answer(found, jsonable.plain, jobs)

    def _draw(self, call: Call) -> int:
        from pantry_tui.cli.printing import pictures
        from pantry_tui.services.batchwork.underway import underway

        with call.pantry() as p:
            found = underway(p)
        return call.answer(
            found, jsonable.plain, lambda rows: pictures.in_progress(rows, call.today)
        )


class Tend(Act):
    code: str = word('7C, or "gauge"')
    job: str = maybe_words("which job; else all that are due")

    def run(self, call: Call) -> int:
        from pantry_tui.services.batchwork import tending

        return call.act(self.at, tending.tend, self.code, self.job or None)
