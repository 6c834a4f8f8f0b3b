"""The walk-through after a power cut: a few questions, the verdict on every item, one booking."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from pantry_tui.app.host import Host
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.app.screens.page import GOES_ON, Page
from pantry_tui.app.texts import outage_text
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log.payloads import Outage
from pantry_tui.core.model import Cut, Place
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Climate
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import outage, put_right
from pantry_tui.services.stock.came_later import came_later
from pantry_tui.services.stock.cut_places import cold_within, outermost
from pantry_tui.services.stock.cut_times import Stretch, read_stretch
from pantry_tui.services.stock.lines import inside
from pantry_tui.services.stock.readings import read_warmth

LOAD = ("full", "half full or less", "I do not know")
ICE = ("ice crystals are left", "all is thawed", "I do not know")
HAPPENED = ("the power was off", "its door stood open or ajar")
NONE: Mapping[str, Sequence[Place]] = {}
BOOK, THROWN, NOTHING = (
    "book it", "book it, and what must be discarded as discarded", "book nothing"
)  # fmt: skip


class _Walk:
    """The answers so far. Every question may be left with Esc; then nothing is booked. Of several
    places at once only from when to when is asked: what else is known is so of one alone."""

    def __init__(
        self,
        host: Host,
        cold: Sequence[Place],
        done: Callable[[], None],
        instead_of: Sequence[str] = (),
        others: Mapping[str, Sequence[Place]] = NONE,
    ) -> None:
        """`instead_of`: the ids of what was booked of it before, where that is put right.
        `others`: places that may have been off with it, by what they are asked as."""
        self.host, self.done, self.instead_of = host, done, instead_of
        self.others = others
        self.cold, self.place = cold, cold[0]
        self.off: Stretch = outage.lasting(host.pantry, 0)  # from when, None: nobody knows; to when
        self.ajar = False
        self.full = False
        self.ice: bool | None = None
        self.warmest: float | None = None

    def choose(
        self, title: str, options: Sequence[str], then: Callable[[str], None], *, sure: bool = False
    ) -> None:
        question = Choose(title, options, sure=sure)
        self.host.push_screen(question, lambda got: then(got) if got else None)

    def start(self) -> None:
        if len(self.cold) > 1:
            self._ask_hours()
            return
        anew = "Asked anew, all of it. " if self.instead_of else ""
        title = f"{anew}{self.place.name} without cold: what happened?"
        self.choose(title, HAPPENED, self._happened)

    def _happened(self, got: str) -> None:
        self.ajar = got == HAPPENED[1]
        if self.ajar or not self.others:
            self._ask_hours()
            return
        alone = f"only {self.place.name}"
        title = "Where else was it off? One circuit, or all of the house?"
        self.choose(title, [alone, *self.others], self._where, sure=True)

    def _where(self, got: str) -> None:
        self.cold = self.others.get(got, self.cold)
        self._ask_hours()

    def _ask_hours(self) -> None:
        title = (
            "For how many hours, until now, or from when to when? unknown: it counts since it was "
            "last read cold."
        )
        example = "6, or 09:00 to 17:30, or unknown"
        self.host.push_screen(TypeLine(title, example, accept=self._read_off), self._hours)

    def _read_off(self, typed: str) -> None:
        """As it is typed; what is still to come is refused while the line can be mended."""
        self.off = read_stretch(self.host.pantry, typed)
        _ = self.cut

    def _hours(self, typed: str | None) -> None:
        if typed is None:
            return
        if len(self.cold) > 1:
            self._show()
        elif self.place.climate is Climate.FREEZER and self.ajar:
            self._load(LOAD[-1])
        elif self.place.climate is Climate.FREEZER:
            self.choose("How full was it?", LOAD, self._load)
        else:
            self._ask_warmest()

    def _load(self, got: str) -> None:
        self.full = got == LOAD[0]
        self.choose("Look at the food now:", ICE, self._ice)

    def _ice(self, got: str) -> None:
        self.ice = {ICE[0]: True, ICE[1]: False}.get(got)
        self._ask_warmest()

    def _ask_warmest(self) -> None:
        title = "How warm did it get? Leave it as it is when nobody knows."
        question = TypeLine(title, "45F or 7C", "unknown", accept=self._read_warmest)
        self.host.push_screen(question, lambda typed: self._show() if typed else None)

    def _read_warmest(self, typed: str) -> None:
        known = typed.lower() not in ("unknown", "?")
        climate = self.place.climate
        self.warmest = read_warmth(self.host.pantry, climate, typed) if known else None

    @property
    def cut(self) -> Cut:
        start, end = self.off
        return outage.cut_of(
            self.host.pantry,
            self.place,
            start,
            end,
            full=self.full,
            max_temp_f=self.warmest,
            ice=self.ice,
            ajar=self.ajar,
        )

    def _show(self) -> None:
        if self.instead_of:
            self._put_right()
            return
        p, cut, goes = self.host.pantry, self.cut, False
        parts: list[str] = []
        for place, rows in outage.judge_each(p, self.cold, cut):
            # Nothing to discard: nothing to offer.
            goes = goes or any(row.verdict in UNFIT for row in rows)
            parts += [outage.heading(place, cut, rows, ajar=self.ajar), outage_text(rows)]
            parts += [*outage.disposal(rows), came_later(p, place, cut)]
        text = "\n\n".join(filter(None, (*parts, CAUTION)))
        ways = (BOOK, THROWN, NOTHING) if goes else (BOOK, NOTHING)
        self.host.push_screen(
            Page(text, GOES_ON), lambda _: self.choose("And now?", ways, self._book, sure=True)
        )

    def _book(self, got: str) -> None:
        if got != NOTHING:
            self.host.attempt(
                lambda: outage.book_all(
                    self.host.pantry, self.cold, self.cut, discard=got == THROWN
                )
            )
            self.done()

    def _put_right(self) -> None:
        """In place of what was booked; what that changes is said then."""
        self.host.attempt(lambda: put_right.power_cuts(self.host.pantry, self.instead_of, self.cut))
        self.done()


def walk_again(host: Host, id_: str, done: Callable[[], None]) -> None:
    """Ask all of a power cut anew, for its place, or for all that were booked with it."""
    p = host.pantry
    cuts = put_right.booked_with(p, put_right.now_standing(p, id_))
    places = [p.ever[one.payload.place] for one in cuts if isinstance(one.payload, Outage)]
    ids = [one.id for one in cuts]
    if len(cuts) == 1:
        _Walk(host, places, done, ids).start()
        return
    one, every = f"only {places[0].name}", f"all {len(ids)} that were booked with it"
    number = {one: 1, every: len(ids)}

    def meant(got: str | None) -> None:
        if got is not None:
            _Walk(host, places[: number[got]], done, ids[: number[got]]).start()

    host.push_screen(Choose("The power cut of which place is put right?", (one, every)), meant)


def walk_through(host: Host, place: str, done: Callable[[], None]) -> None:
    """Ask, show, book. `done` is called when something was booked. Where the cursor stands on no
    cold place, which of them is meant is asked first: those that stand in it, or all of these
    together, before those that stand elsewhere."""
    p = host.pantry
    here = p.find_place(place)
    if here.climate.is_cold:
        _Walk(host, [here], done, others=_off_with(p, here)).start()
        return
    paths = p.place_paths()
    cold = sorted(
        (one for one in p.places.values() if one.climate.is_cold), key=lambda one: paths[one.id]
    )
    if not cold:
        host.tell(
            f"{here.name} is neither refrigerator nor freezer, and no place is.", refused=True
        )
        return
    within = inside(p, here.id)
    cold.sort(key=lambda one: one.id not in within)
    each: dict[str, Sequence[Place]] = {paths[one.id]: [one] for one in cold}
    ways = {**_together(p, here), **each}
    title = f"{here.name} needs no cold. Where was the power off, or a door ajar?"
    question = Choose(title, list(ways))
    host.push_screen(question, lambda got: _Walk(host, ways[got], done).start() if got else None)


def _off_with(p: Pantry, cold: Place) -> Mapping[str, Sequence[Place]]:
    """What may have been off with a cold place: all of the cold in the room around it, or in the
    house."""
    return _together(p, p.places.get(cold.parent or ""))


def _together(p: Pantry, room: Place | None) -> Mapping[str, Sequence[Place]]:
    """All of the cold in a room, and all there is, where that is more than one, or than the room
    has."""
    everywhere, all_here = outermost(p), cold_within(p, room) if room else []
    ways: dict[str, Sequence[Place]] = {}
    if room is not None and len(all_here) > 1:
        ways[f"all {len(all_here)} in {room.name}"] = all_here
    if len(everywhere) > max(1, len(all_here)):
        ways[f"all {len(everywhere)}, everywhere"] = everywhere
    return ways
