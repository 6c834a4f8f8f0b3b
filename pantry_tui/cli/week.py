"""What to eat this week: proposed, arranged, accepted, eaten day by day."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, option
from pantry_tui.cli.printing import week as show
from pantry_tui.cli.printing.lines import done
from pantry_tui.cli.verb import Verb
from pantry_tui.core.dates import read_coming, read_lately
from pantry_tui.errors import BadInput
from pantry_tui.services.done import Done
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import accepting, week


class Week(Verb):
    start: str | None = option("--from", "DATE", "seven days from that one")
    unknown: bool = flag("--unknown", "also what has no published figure")
    accept: bool = flag("--accept", "this is the plan; nothing is booked yet")
    replan: bool = flag("--replan", "plan again, without accepted and wished", old=("--anew",))
    eaten: str | None = option("--eaten", "DATE", "book all of that day")
    pin: str | None = option("--pin", "CODE=DAY", "eat it on that day", old=("--keep",))
    unpin: str | None = option("--unpin", "CODE", "on any day again")
    swap: str | None = option("--swap", "CODE[=FOOD]", "another food like it instead, or that one")
    skip: str | None = option(
        "--skip", "CODE", "a lid code or a food: not this week, or again", old=("--drop",)
    )
    eat_out: str | None = option(
        "--eat-out", "DAY", "you eat out that day, or not after all", old=("--out",)
    )
    dish: str | None = option("--dish", "NAME=DAY", "cook that dish, or not after all")

    def run(self, call: Call) -> int:
        start = read_coming(self.start, call.today) if self.start else None
        self._one_at_a_time()
        if self.eaten:
            day = read_lately(self.eaten, call.today)
            return call.done(lambda p: week.eaten(p, day))
        with call.pantry() as p:
            wished = self._wish(p, call)
            if self.accept:
                accepting.accept(p, start)
            found = week.week(p, start, unknown=self.unknown)
        said = done(wished) if wished else []
        return call.answer(found, jsonable.week, lambda view: [*said, *show.week(view)])

    def _one_at_a_time(self) -> None:
        asked = {
            "--accept": self.accept,
            "--replan": self.replan,
            "--eaten": self.eaten,
            "--pin": self.pin,
            "--unpin": self.unpin,
            "--swap": self.swap,
            "--skip": self.skip,
            "--eat-out": self.eat_out,
            "--dish": self.dish,
        }
        given = [name for name, value in asked.items() if value]
        if len(given) > 1:
            raise BadInput(f"Say {' or '.join(given[:2])}, one at a time.")

    def _wish(self, p: Pantry, call: Call) -> Done | None:
        """What was said of the week, if anything."""
        from pantry_tui.services.plan import wishes

        if self.replan:
            return week.forget(p)
        if self.pin:
            name, day = _on_day(self.pin, "--pin 7C=friday")
            return wishes.pin(p, name, read_coming(day, call.today))
        if self.dish:
            name, day = _on_day(self.dish, '--dish "bean soup=friday"')
            return wishes.cook(p, name, read_coming(day, call.today))
        if self.eat_out:
            return wishes.out(p, read_coming(self.eat_out, call.today))
        if self.swap:
            name, _, food = self.swap.partition("=")
            return wishes.swap(p, name.strip(), food.strip())
        for typed, do in (
            (self.unpin, wishes.unpin),
            (self.skip, wishes.leave_out),
        ):
            if typed:
                return do(p, typed)
        return None


def _on_day(text: str, example: str) -> tuple[str, str]:
    """("bean soup=friday") -> what, and the day as it was typed. Raises BadInput."""
    name, equals, day = text.rpartition("=")
    if not (equals and name.strip() and day.strip()):
        raise BadInput(f"{text[:40]!r} names no day: write {example}.")
    return name.strip(), day
