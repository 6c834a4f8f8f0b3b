"""Places: what they are, how warm they are, what stands in them."""

from __future__ import annotations

from pantry_tui.cli.call import Call, either
from pantry_tui.cli.fields import flag, maybe_words, needed, number, option, several, word, words
from pantry_tui.cli.printing import places as show
from pantry_tui.cli.printing.lines import done
from pantry_tui.cli.verb import Act, Verb
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Climate
from pantry_tui.errors import BadInput
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import places


def _warmth(p: Pantry, climate: Climate, typed: str | None, about: str = "temp") -> float | None:
    """°F; a bare number is meant as the household's units say, and asked about where no place of
    that climate can be so."""
    from pantry_tui.services.stock.readings import read_warmth

    return read_warmth(p, climate, typed, about) if typed else None


class Add(Verb):
    name: str = words("what you call it")
    climate: str | None = option(
        "--climate", "C", "room, pantry, cellar, fridge or freezer; else that of the place it is in"
    )
    inside: str | None = option("--in", "PLACE", "the place it is in")
    temp: str | None = option("--temp", "55F", "how warm it is meant to be")
    capacity: int | None = number("--capacity", "N", "how many it holds")

    def run(self, call: Call) -> int:
        return call.done(
            lambda p: places.add(
                p,
                self.name,
                self.climate or "",
                self.inside,
                _warmth(p, places.climate_of(p, self.name, self.climate, self.inside), self.temp),
                self.capacity,
            )
        )


class Change(Verb):
    name: str = words("a place")
    called: str | None = option("--name", "NAME", "what you call it from now on")
    climate: str | None = option("--climate", "C", "room, pantry, cellar, fridge or freezer")
    temp: str | None = option("--temp", "55F", "how warm it is meant to be")
    capacity: int | None = number("--capacity", "N", "how many it holds")

    def run(self, call: Call) -> int:
        def change(p: Pantry) -> Done:
            now = p.find_place(self.name).climate
            climate = places.read_climate(self.climate) if self.climate else now
            warm = _warmth(p, climate, self.temp)
            return places.change(
                p,
                self.name,
                name=self.called,
                climate=self.climate,
                capacity=self.capacity,
                temp_f=warm,
            )

        return call.done(change)


class Merge(Verb):
    name: str = words("a place that is no more")
    into: str = needed("--into", "PLACE", "where its stock stands from now on")

    def run(self, call: Call) -> int:
        return call.done(lambda p: places.merge(p, self.name, self.into))


class Remove(Verb):
    name: str = words("a place that is no more")
    to: str | None = option("--to", "PLACE", "where its stock goes")

    def run(self, call: Call) -> int:
        return call.done(lambda p: places.remove(p, self.name, self.to))


class Listing(Verb):
    def run(self, call: Call) -> int:
        with call.pantry() as p:
            found = places.listing(p)
        return call.answer(found, jsonable.places, lambda rows: show.places(rows, call.units.text))


class Reading(Act):
    place: str = words("a place")
    temp: str = word("41F, 5C", "TEMP")
    rh: int | None = number("--rh", "PERCENT", "the humidity, if you know it")
    since: str | None = option(
        "--since", "90m", "how long it had been so warm, or from when on; else nobody knows"
    )

    def run(self, call: Call) -> int:
        from pantry_tui.services.stock import readings

        with call.pantry() as p:
            asked = (self.place, self.temp, self.rh)
            what = call.book(p, self.at, readings.read_typed, *asked, since=self.since or "")
        return call.answer(what, jsonable.done, done)


class Outage(Verb):
    place: str = words("a fridge or freezer, or the room of one")
    start: str = needed("--from", "TIME", "18:00, yesterday 18:00, 2026-11-24 18:00, or unknown")
    end: str = needed("--to", "TIME", "09:00, or 2026-11-25 09:00")
    full: bool = flag("--full", "the freezer was full")
    half: bool = flag("--half", "half full, as when nobody knows")
    max_temp: str | None = option("--max-temp", "45F", "the warmest it is known to have been")
    ice: bool = flag("--ice", "there are ice crystals left")
    no_ice: bool = flag("--no-ice", "there are none")
    ajar: bool = flag("--ajar", "its door stood open or ajar")
    dry_run: bool = flag("--dry-run", "judge and book nothing")

    def run(self, call: Call) -> int:
        from pantry_tui.services.stock import cut_hours, outage
        from pantry_tui.services.stock.came_later import came_later
        from pantry_tui.services.stock.cut_places import reached
        from pantry_tui.services.stock.cut_times import spoken
        from pantry_tui.services.stock.places_ever import begins_with, place_ever, said_otherwise

        today = call.today
        start, end = cut_hours.times(spoken(self.start, today), spoken(self.end, today), today)
        ice = either(self.ice, self.no_ice, "--ice or --no-ice")
        full = either(self.full, self.half, "--full or --half")
        with call.pantry() as p:
            begins = begins_with(p, start)
            named = place_ever(p, self.place, begins)
            told = self.max_temp or self.ajar or full is not None or ice is not None
            last = begins_with(p, end)
            first = last if start is None else begins
            cold = reached(p, named, first, last, told=bool(told))
            warmest = _warmth(p, cold[0].climate, self.max_temp, "max_temp")
            cut = outage.cut_of(
                p, cold[0], start, end, full=full, max_temp_f=warmest, ice=ice, ajar=self.ajar
            )
            found = outage.judge_each(p, cold, cut)
            rows = [row for _, of_place in found for row in of_place]
            which = [said_otherwise(p, named, self.place)]
            which += [came_later(p, place, cut) for place in cold]
            cautions = [*filter(None, which), CAUTION]
            says = [
                line
                for place, of_place in found
                for line in (
                    outage.heading(place, cut, of_place, ajar=self.ajar),
                    *show.outage(of_place),
                    *(outage.disposal(of_place) if self.dry_run else ()),
                )
            ]
            booked: list[str] = []
            if not self.dry_run:
                said = done(outage.book_all(p, cold, cut))
                booked = [line for line in said if not line.endswith(CAUTION)]  # it ends the answer
        return call.answer(
            rows,
            lambda found: {"items": jsonable.plain(found), "cautions": cautions},
            lambda _: [*booked, *says, *cautions],
        )


class Count(Act):
    place: str = maybe_words("without one: which place to count next")
    seen: tuple[str, ...] = several("--seen", "CODE=N", "what was counted, batch by batch")
    more: bool = flag("--more", "more stands there than was ever put up, and that is so")

    def run(self, call: Call) -> int:
        from pantry_tui.services.stock import count

        with call.pantry() as p:
            if not self.place:
                found = count.next_places(p)
                paths = p.place_paths()
                rows = [
                    {
                        "place": paths[one.place.id],
                        "days": one.days,
                        "in_part": one.in_part,
                        "says": count.since(one),
                    }
                    for one in found
                ]
                return call.answer(rows, jsonable.plain, show.next_places)
            place = p.find_place(self.place)
            if not self.seen:
                return call.answer(count.lines(p, place), jsonable.plain, show.count_lines)
            counted = dict(_seen(text) for text in self.seen)
            numbers = {code: int(one) for code, one in counted.items() if _is_number(code, one)}
            amounts = {code: one for code, one in counted.items() if code not in numbers}
            differs, what = call.book(
                p, self.at, count.count_now, place, numbers, amounts, more=self.more
            )
        data = {"place": place.name, "differences": differs, "message": what.message}
        return call.answer(what, lambda _: jsonable.plain(data), done)


def _seen(text: str) -> tuple[str, str]:
    code, equals, seen = text.partition("=")
    if not (code and equals and seen):
        raise BadInput(f"{text[:40]!r} is no count: write --seen 7C=5, or 9H/1=38lb.")
    return code, seen


def _is_number(code: str, seen: str) -> bool:
    """Whether containers (or pieces) of a batch were counted, not what is in one of them."""
    return "/" not in code and seen.isascii() and seen.isdigit() and len(seen) < 5
