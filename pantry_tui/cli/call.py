"""One command as it was typed, and how it answers."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from typing import TYPE_CHECKING, Any, Concatenate, ParamSpec, TypeVar

from pantry_tui.core.text import clean, in_sight, unsteered, whole_characters
from pantry_tui.errors import BadInput, PantryError, Refused

if TYPE_CHECKING:
    from datetime import date
    from pathlib import Path

    from pantry_tui.services.clock import Clock
    from pantry_tui.services.inunits import Units
    from pantry_tui.services.moments import Moment
    from pantry_tui.services.pantry import Pantry
    from pantry_tui.services.rows import Done

P = ParamSpec("P")
T = TypeVar("T")


class Call:
    """What stands around a verb: the moment told as now (None: the real one), the store named
    (None: the default one), and whether it answers in JSON."""

    __slots__ = ("_open", "_opened", "_units", "as_json", "store", "told")

    def __init__(self, told: Moment | None, store: Path | None, as_json: bool) -> None:
        self.told, self.store, self.as_json = told, store, as_json
        self._opened: Pantry | None = None  # stays known when it was left
        self._open: Pantry | None = None
        self._units: Units | None = None

    @property
    def now(self) -> Moment:
        """The day, and the minute of it unless only a day was told."""
        if self.told is not None:
            return self.told
        from datetime import UTC, datetime

        here = datetime.now(UTC).astimezone()  # the day where the person is
        return here.date(), here.hour * 60 + here.minute

    @property
    def today(self) -> date:
        return self.now[0]

    @property
    def path(self) -> Path:
        if self.store is not None:
            return self.store
        from pantry_tui.paths import default_store

        return default_store()

    @property
    def clock(self) -> Clock:
        """The real one, or the moment that was told."""
        from pantry_tui.services.clock import Clock

        return Clock(*self.told, typed=True) if self.told else Clock()

    def pantry(self) -> Pantry:
        """The store. Raises StoreError."""
        from pantry_tui.services.pantry import open_pantry

        p = open_pantry(self.path, self.clock)
        self._open = p
        p.leaving.append(self._heard)
        for sentence in p.store.told:
            print(clean(sentence), file=sys.stderr)
        self._opened = p
        p.asks_which = True
        return p

    def settle(self) -> None:
        """Once a day, when something was booked and the person has the answer: a backup."""
        if self._opened is None or not self._opened.store.booked:
            return
        from pantry_tui.store.copies import daily

        sys.stdout.flush()
        try:
            daily(self._opened.path)
        except PantryError as error:
            print(clean(f"What you did is booked; no backup: {error.message}"), file=sys.stderr)

    def _heard(self, p: Pantry) -> None:
        """Its units, as they are at the end of the command."""
        from pantry_tui.services.inunits import Units

        self._open = None
        with suppress(PantryError):  # a broken store has been told of already
            self._units = Units.of(p).kept()

    @property
    def units(self) -> Units:
        """Those of the household that the command spoke to; where it spoke to none, of the store
        there is."""
        from pantry_tui.services.inunits import Units

        if self._open is not None:
            return Units.of(self._open)
        if self._units is None and self.path.exists():
            with suppress(PantryError), self.pantry():
                pass
        if self._units is None:
            self._units = Units(metric=False)
        return self._units

    def mend(self, error: PantryError, typed: Sequence[str]) -> None:
        """Say what was refused in the units of the household, if the command spoke to one; what
        was typed is said as it was typed."""
        if self._units is not None:
            error.message = self._units.text(error.message, *typed)

    def answer(
        self, found: T, data: Callable[[T], object], lines: Callable[[T], Sequence[str]]
    ) -> int:
        """The answer, as JSON or as plain lines: only the one that is asked for is made."""
        units = self.units
        if self.as_json:
            print_json(units.data(data(found)))
        else:
            print(in_sight("\n".join(map(units.text, lines(units.rows(found))))))
        return 0

    def refused(self, reasons: Sequence[str]) -> int:
        """What was answered is a refusal: its reason in a sentence where errors are read, too."""
        said = reasons[0] if reasons else "No publication allows that."
        print(clean(self.units.text(said)), file=sys.stderr)
        return 1

    def say(self, sentence: str, **data: object) -> int:
        """One sentence; as JSON with what else a script wants to know."""
        return self.answer(
            sentence, lambda said: {**data, "message": said}, lambda said: [clean(said)]
        )

    def done(self, do: Callable[[Pantry], Done]) -> int:
        """Do one thing to the store and say what was done."""
        from pantry_tui.services.output import jsonable

        return self._doing(do, jsonable.done)

    def took_back(self, do: Callable[[Pantry], Done]) -> int:
        """The same of what was taken back or done again."""
        from pantry_tui.services.output import jsonable

        return self._doing(do, jsonable.took_back)

    def _doing(self, do: Callable[[Pantry], Done], data: Callable[[Done], object]) -> int:
        from pantry_tui.cli.printing.lines import done

        with self.pantry() as p:
            what = do(p)
        return self.answer(what, data, done)

    def act(
        self,
        at: str | None,
        do: Callable[Concatenate[Pantry, P], Done],
        *args: P.args,
        **named: P.kwargs,
    ) -> int:
        """The same, of a service that is told when it happened."""
        return self.done(lambda p: self.book(p, at, do, *args, **named))

    def book(
        self,
        p: Pantry,
        at: str | None,
        do: Callable[Concatenate[Pantry, P], T],
        *args: P.args,
        **named: P.kwargs,
    ) -> T:
        """What `do` answers, told that it happened `at` (None: now). Raises BadInput, Refused."""
        told: dict[str, Any] = {**named, **self._when(at, do)}
        return do(p, *args, **told)

    def _when(self, at: str | None, do: Callable[..., object]) -> Mapping[str, object]:
        """`at` as a service takes it. The one place to change when all of them do."""
        if at is None:
            return {}
        from inspect import signature  # only here, where nothing else is as slow

        from pantry_tui.services.moments import offset, read_at

        typed, zone = offset(at)
        moment = read_at(typed, self.now)
        if "at" in signature(do).parameters:
            from pantry_tui.services.stock.seen import At

            return {"at": At(*moment, zone)}
        if moment == (self.today, None):
            return {}
        raise Refused("This is booked for today only so far: leave --at out.")

    def day(self, at: str | None) -> date | None:
        """`at` for a service that takes a day alone. Raises BadInput, Refused for an hour."""
        if at is None:
            return None
        from pantry_tui.services.moments import read_at

        day, minute = read_at(at, self.now)
        if minute is not None:
            raise Refused("This is booked by the day only so far: leave the hour out of --at.")
        return day


class Question(BadInput):
    """Bad input that an answer would mend; `asked` says as JSON what was read and what is asked:
    asks, read_as, unread."""

    def __init__(self, message: str, asked: Mapping[str, object]) -> None:
        super().__init__(message)
        self.asked = asked


def print_json(data: object) -> None:
    """On stdout, readable, in the characters that were typed; of a list each entry on its line,
    which `json` writes three times as fast as what it indents."""
    import json

    if isinstance(data, list) and data:
        lines = list(map(json.JSONEncoder(ensure_ascii=False).encode, data))
        if not "".join(lines).isprintable():
            lines = [unsteered(whole_characters(line)) for line in lines]
        print("[\n", ",\n".join(lines), "\n]", sep="")
    else:
        print(unsteered(whole_characters(json.dumps(data, ensure_ascii=False, indent=1))))


def either(yes: bool, no: bool, flags: str) -> bool | None:
    """Which of two flags ("--ice or --no-ice") is given, None where neither is. Raises BadInput
    where both are."""
    if yes and no:
        raise BadInput(f"Say {flags}, not both.")
    return yes if yes or no else None


def key_values(typed: Sequence[str]) -> list[tuple[str, str]]:
    """("minutes=25", ...) -> pairs. Raises BadInput."""
    pairs = [pair.partition("=") for pair in typed]
    for key, equals, value in pairs:
        if not (key.strip() and equals and value.strip()):
            raise BadInput("Write --process as key=value, for example --process minutes=25.")
    return [(key.strip(), value.strip()) for key, _, value in pairs]
