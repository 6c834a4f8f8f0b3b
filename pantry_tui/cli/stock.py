"""What is done to the stock. A code is a lid code (7C), or one container of it (7C/3)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import takewhile

from pantry_tui.cli.call import Call, either, key_values
from pantry_tui.cli.fields import (
    flag,
    maybe,
    maybe_whole,
    maybe_words,
    number,
    option,
    repeated,
    several,
    word,
    words,
)
from pantry_tui.cli.verb import Act, Verb
from pantry_tui.core.lidcode import is_code, normal_code
from pantry_tui.errors import BadInput
from pantry_tui.services.stock import act
from pantry_tui.services.stock.drawing import begins_amount


def _much(typed: str, all_: bool) -> str | None:
    """How much is meant, as a service takes it. Raises BadInput."""
    if typed and all_:
        raise BadInput("Say how much, or --all, not both.")
    return "all" if all_ else typed or None


def _parted(ref: str, rest: str) -> tuple[str, str]:
    """("lentil", "soup 2 lb") -> ("lentil soup", "2 lb"): what is meant, and how much of it, where
    the name of a food was typed without quotes."""
    words = rest.split()
    if is_code(normal_code(ref.partition("/")[0])):
        return ref, rest
    name = list(takewhile(lambda one: not begins_amount(one), words))
    return " ".join([ref, *name]), " ".join(words[len(name) :])


class Use(Act):
    code: str = word("7C, or 7C/3 for that very jar, or a food")
    amount: str = maybe_words("how many, 2 lb, half or 2 servings")
    all: bool = flag("--all", "all there is of it")
    any: bool = flag("--any", "say nothing of older jars")

    def run(self, call: Call) -> int:
        what, much = _parted(self.code, self.amount)
        return call.act(self.at, act.use, what, _much(much, self.all), self.any)


class Open(Act):
    code: str = word("7C, or 7C/3 for that very jar, or a food")

    def run(self, call: Call) -> int:
        return call.act(self.at, act.open_, self.code)


class Thaw(Act):
    code: str = word("7C, or 7C/3 for that very bag, or a food")
    how: str | None = option("--how", "HOW", "fridge, cold water or microwave; else fridge")

    def run(self, call: Call) -> int:
        return call.act(self.at, act.thaw, self.code, self.how or "fridge")


class Ready(Act):
    code: str = word("7C for all of it, or 7C/3 for that one")
    into: str | None = option("--into", "LINE", 'what it goes into: "6 quart jars, fridge"')

    def run(self, call: Call) -> int:
        if not self.into:
            return call.act(self.at, act.ready, self.code)
        from pantry_tui.services.batchwork import repack

        return call.act(self.at, repack.ready_into, self.code, self.into)


class Repack(Act):
    code: str = word("7C, or 7C/3 for that very one")
    line: str = words('into what, how many, where: "6 quart jars, fridge"')
    took: str | None = option("--took", "AMOUNT", "how much of it; else one whole container")
    all: bool = flag("--all", "all there is of it")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing import putup as show
        from pantry_tui.services.batchwork import repack
        from pantry_tui.services.output import jsonable

        much = _much(self.took or "", self.all) or ""
        with call.pantry() as p:
            made = call.book(p, self.at, repack.repack, self.code, self.line, much)
        return call.answer(made, jsonable.putup, show.putup)


class Move(Act):
    code: str = word("7C, or 7C/3 for that very one")
    place: str = words("where to")
    count: int | None = number("--count", "N", "how many of the batch; else all")

    def run(self, call: Call) -> int:
        return call.act(self.at, act.move, self.code, self.place, self.count)


class Give(Act):
    code: str = word("7C, or 7C/3 for that very one")
    amount: str = maybe_words("how many, 2 lb, half; else 1")
    all: bool = flag("--all", "all there is of it")
    to: str | None = option("--to", "WHO", "to whom")

    def run(self, call: Call) -> int:
        much = _much(self.amount, self.all)
        return call.act(self.at, act.give, self.code, much, self.to or "")


class Missing(Act):
    code: str = word("7C, or 7C/3 for that very one")
    amount: str = maybe_words("how many, 2 lb, half; else 1")
    all: bool = flag("--all", "all there is of it")

    def run(self, call: Call) -> int:
        return call.act(self.at, act.missing, self.code, _much(self.amount, self.all))


class Discard(Act):
    code: str = word("7C, or 7C/3 for that very one")
    amount: str = maybe_words("how many, 2 lb, half; else 1")
    all: bool = flag("--all", "all there is of it")
    why: str | None = option("--why", "WHY", 'the reason, like "seal failed"; it must be said')

    def run(self, call: Call) -> int:
        much = _much(self.amount, self.all)
        return call.act(self.at, act.discard, self.code, much, self.why or "")


class Reserve(Act):
    code: str = word("7C, or 7C/3 for that very one")
    count: int | None = maybe_whole("how many of the batch")
    whom: tuple[str, ...] = several("--for", "WHOM", "gift, or a name")
    free: bool = flag("--free", "back to your own stock")

    def run(self, call: Call) -> int:
        from pantry_tui.services.stock import reserve

        if not self.free:
            whom = " ".join(self.whom or ("gift",))
            return call.act(self.at, reserve.reserve, self.code, self.count, whom)
        if self.whom:
            raise BadInput("Say --for or --free, not both.")
        return call.act(self.at, reserve.free, self.code, self.count)


OF_BATCH = ("food", "method", "count", "made", "size", "note", "printed", "process")
OF_READING = ("temp", "rh", "since", "at")
OF_CUT = ("start", "end", "full", "half", "max_temp", "ice", "no_ice", "ajar")


class Correct(Verb):
    code: str = word("a lid code, or the id of a reading or a power cut in `log`", "CODE")
    food: str | None = option("--food", "FOOD", "what it is")
    method: str | None = option("--method", "METHOD", "how it is kept")
    count: int | None = number("--count", "N", "how many were put up")
    made: str | None = option("--made", "DATE", "or unknown")
    size: str | None = option("--size", "SIZE", "of one container")
    note: str | None = option("--note", "TEXT", "in place of the note")
    printed: str | None = option("--printed", "DATE", "on what was bought in")
    process: tuple[str, ...] = repeated("--process", "KEY=VALUE", "minutes=20, psi=11 ...")
    temp: str | None = option("--temp", "41F", "of a reading: how warm it was")
    rh: int | None = number("--rh", "PERCENT", "the humidity")
    since: str | None = option("--since", "90m", "how long it had been so warm")
    at: str | None = option("--at", "WHEN", "when it was read: DATE, or DATE HH:MM")
    start: str | None = option("--from", "TIME", "of a power cut: 18:00, or unknown")
    end: str | None = option("--to", "TIME", "09:00, or 2026-11-25 09:00")
    full: bool = flag("--full", "the freezer was full")
    half: bool = flag("--half", "half full, as when nobody knows")
    max_temp: str | None = option(
        "--max-temp", "45F", "the warmest it is known to have been, or unknown"
    )
    ice: bool = flag("--ice", "there were ice crystals left")
    no_ice: bool = flag("--no-ice", "there were none")
    ajar: bool = flag("--ajar", "its door stood open or ajar")

    def run(self, call: Call) -> int:
        read, cut = self._says(OF_READING), self._says(OF_CUT)
        if read + cut + self._says(OF_BATCH) > 1:
            raise BadInput(
                "Put one thing right at a time: a batch by its lid code, a reading or a power cut "
                "by its id in `pantry-tui log`."
            )
        if _is_id(self.code):
            return self._power_cut(call) if cut else self._reading(call)
        if read or cut:
            raise BadInput(
                "A reading or a power cut is put right by its id: `pantry-tui log` lists them."
            )
        return self._batch(call)

    def _says(self, options: Sequence[str]) -> bool:
        return any(getattr(self, one) not in (None, False, ()) for one in options)

    def _reading(self, call: Call) -> int:
        from pantry_tui.services.stock import put_right

        warm = self.temp or "", self.rh, self.since or ""
        return call.act(self.at, put_right.reading, self.code, *warm)

    def _power_cut(self, call: Call) -> int:
        from pantry_tui.services.stock import put_right

        hours = put_right.Hours(
            self.start or "",
            self.end or "",
            either(self.full, self.half, "--full or --half"),
            self.max_temp or "",
            either(self.ice, self.no_ice, "--ice or --no-ice"),
            self.ajar,
        )
        return call.done(lambda p: put_right.power_cut(p, self.code, hours))

    def _batch(self, call: Call) -> int:
        from pantry_tui.services.stock.correct import correct

        pairs = key_values(self.process)
        return call.done(
            lambda p: correct(
                p,
                self.code,
                made=self.made,
                size=self.size,
                note=self.note,
                printed=self.printed,
                process=pairs,
                food=self.food,
                method=self.method,
                count=self.count,
            )
        )


def _is_id(typed: str) -> bool:
    """Whether it names a line of the log: no lid code is as long."""
    return re.fullmatch(r"[0-9a-f]{6,}", typed) is not None


class Undo(Verb):
    event: str | None = maybe("the id of a line of `pantry-tui log`; else the newest act")

    def run(self, call: Call) -> int:
        from pantry_tui.services.stock.undo import undo

        return call.took_back(lambda p: undo(p, self.event))


class Redo(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.services.stock.undo import redo

        return call.took_back(redo)
