"""The verbs of looking after the store: rounds, readings, signs, power cuts, rules of one's own."""

from __future__ import annotations

from pathlib import Path

from pantry_tui.cli import show as out
from pantry_tui.cli.call import Call, key_values
from pantry_tui.core.amounts import read_altitude, read_temperature
from pantry_tui.core.dates import read_date
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.output import jsonable


def reading(call: Call) -> int:
    from pantry_tui.services.stock import readings

    args = call.args
    at = read_date(args.at, call.today) if args.at else None
    return call.done(
        lambda p: readings.read(
            p, args.place, read_temperature(args.temp, p.bare_degree), args.rh, at
        )
    )


def outage(call: Call) -> int:
    from pantry_tui.services.stock import outage as outage_

    args = call.args
    hours = outage_.hours_between(args.start, args.end, call.today)
    if args.ice and args.no_ice:
        raise BadInput("Say --ice or --no-ice, not both.")
    with call.pantry() as p:
        place_ = p.find_place(args.place)
        warmest = read_temperature(args.max_temp, p.bare_degree) if args.max_temp else None
        ice = True if args.ice else False if args.no_ice else None
        cut = outage_.cut_of(place_, hours, full=args.full, max_temp_f=warmest, ice=ice)
        rows = outage_.judge_all(p, place_, cut)
        lines = out.outage(rows)
        if not args.dry_run:
            lines = [*out.done(outage_.book(p, place_, cut)), *lines]
    return call.say({"items": jsonable.plain(rows)}, lines)


def own(call: Call) -> int:
    from pantry_tui.services.lookup import own as own_

    args = call.args
    if args.what == "food":
        name = " ".join(args.name)
        return call.done(lambda p: own_.add_food(p, name, args.group, args.acidity, args.also))
    if args.what == "rule":
        return call.done(
            lambda p: own_.add_rule(
                p,
                args.method,
                " ".join(args.food),
                climate=args.climate,
                keeps=args.keeps,
                kind=args.kind,
                state=args.state,
                why=args.why,
            )
        )
    with call.pantry() as p:
        lines = [clean(line) for line in own_.listing(p)]
    return call.say(lines, lines or ["Nothing of your own yet: see `pantry-tui own --help`."])


def sign(call: Call) -> int:
    from pantry_tui.services.lookup import signs as signs_

    with call.pantry() as p:
        said = signs_.mark(p, call.args.code, " ".join(call.args.sign))
    return call.say(jsonable.plain(said), out.sign(said))


def signs(call: Call) -> int:
    from pantry_tui.services.lookup import signs as signs_

    rows = signs_.listing(" ".join(call.args.method) or None)
    return call.say(jsonable.plain(rows), out.signs(rows))


def recall(call: Call) -> int:
    from pantry_tui.services.lookup import signs as signs_

    with call.pantry() as p:
        rows = signs_.recall(p, call.args.code)
    return call.say(jsonable.plain(rows), out.recall(rows))


def round_(call: Call) -> int:
    from pantry_tui.services.stock import count as round_s

    args = call.args
    with call.pantry() as p:
        if not args.place:
            found = round_s.next_places(p)
            paths = p.place_paths()
            rows = [{"place": paths[pl.id], "days": days} for pl, days in found]
            return call.say(rows, out.next_places(rows))
        place = p.find_place(args.place)
        if not args.seen:
            lines = round_s.lines(p, place)
            return call.say(jsonable.plain(lines), out.round_lines(lines))
        counts = dict(_count(text) for text in args.seen)
        differs = round_s.from_counts(p, place, counts)
        done = round_s.finish(p, place)
    data = {"place": place.name, "differences": jsonable.plain(differs), "message": done.message}
    return call.say(data, out.done(done))


def _count(text: str) -> tuple[str, int]:
    code, equals, number = text.partition("=")
    if not (code and equals and number.isascii() and number.isdigit() and len(number) < 5):
        raise BadInput(f"{text[:40]!r} is no count: write --seen 7C=5.")
    return code, int(number)


def sheet(call: Call) -> int:
    from pantry_tui.services.output import paper

    with call.pantry() as p:
        page = paper.sheet(p, " ".join(call.args.what))
    text = paper.sheet_html(page) if call.args.html else paper.sheet_text(page)
    return call.say(jsonable.plain(page), [text.rstrip("\n")])


def labels(call: Call) -> int:
    from pantry_tui.services.output import paper

    with call.pantry() as p:
        found = paper.labels(p, call.args.codes)
    text = paper.label_html(found) if call.args.html else paper.label_text(found)
    return call.say(jsonable.plain(found), [text.rstrip("\n")])


def calendar(call: Call) -> int:
    from pantry_tui.services.output import paper

    path = Path(call.args.file)
    with call.pantry() as p:
        text = paper.calendar(p)
    try:
        with path.open("x", encoding="utf-8", newline="") as handle:
            handle.write(text)
    except FileExistsError:
        raise Refused(f"{path} is already there: name another file.") from None
    except OSError as error:
        raise Refused(f"{path} cannot be written: name another file.") from error
    said = f"Wrote {text.count('BEGIN:VEVENT')} dates to {path}."
    return call.say({"file": str(path), "message": said}, [said])


def process(call: Call) -> int:
    from pantry_tui.reference.tables import load_tables
    from pantry_tui.services.lookup.process import process as published

    args = call.args
    if args.altitude:
        altitude = read_altitude(args.altitude)
    elif call.path.exists():
        with call.pantry() as p:
            altitude = p.altitude_ft
    else:
        altitude = 0
    food = " ".join(args.food)
    answer = published(load_tables(), food, args.jar, args.canner, args.pack, altitude)
    return call.say(answer, out.process(answer, altitude))


def keys(call: Call) -> int:
    from pantry_tui.app.commands import page

    rows = page()
    return call.say(rows, out.keys(rows))


def correct(call: Call) -> int:
    from pantry_tui.services.stock.correct import correct as put_right

    args = call.args
    pairs = key_values(args.process)
    return call.done(
        lambda p: put_right(
            p, args.code, made=args.made, size=args.size, note=args.note, process=pairs
        )
    )
