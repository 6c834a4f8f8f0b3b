"""One short function a verb: call the service, print what it answers."""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path

from pantry_tui.cli import show as out
from pantry_tui.cli.call import Call, key_values
from pantry_tui.core.amounts import read_altitude, read_temperature
from pantry_tui.core.dates import read_date, read_span
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput, PantryError
from pantry_tui.services.batchwork import putup as putup_
from pantry_tui.services.books import logbook
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry, create
from pantry_tui.services.rows import PutUpReading
from pantry_tui.services.stock import act, view
from pantry_tui.services.stock import places as places_


def app(call: Call) -> int:
    """The app on the store; a first start makes the default store."""
    path = call.path
    if call.store is None and not path.exists():
        create(path)
    from pantry_tui.app.main import run  # the screen library is loaded only here

    return run(path, call.today)


def demo(call: Call) -> int:
    from pantry_tui.services.demo import build_demo

    if call.args.init:
        path = Path(call.args.init)
        build_demo(path, call.today)
        said = f"Wrote the demo store {path}: try `pantry-tui --store {path} due`."
        return call.say({"store": str(path), "message": said}, [said])
    from pantry_tui.app.main import run

    with tempfile.TemporaryDirectory(prefix="pantry-tui-") as folder:
        path = Path(folder) / "demo.db"
        build_demo(path, call.today)
        return run(path, call.today)


def init(call: Call) -> int:
    args, path = call.args, call.path
    if args.demo:
        from pantry_tui.services.demo import build_demo

        build_demo(path, call.today)
    else:
        create(
            path,
            altitude_ft=read_altitude(args.altitude),
            people=args.people,
            units=args.units,
        )
    todo = "add a place: pantry-tui place add NAME --climate pantry"
    said = f"Made the store {path}; next, {'see pantry-tui due' if args.demo else todo}."
    return call.say({"store": str(path), "message": said}, [said])


def place(call: Call) -> int:
    args = call.args
    if args.what == "list":
        with call.pantry() as p:
            found = places_.listing(p)
        return call.say(
            [{k: v for k, v in one.items() if k != "rows"} for one in jsonable.shelves(found)],
            out.places(found),
        )
    if args.what == "change":
        return call.done(
            lambda p: places_.change(
                p,
                " ".join(args.name),
                climate=args.climate,
                capacity=args.capacity,
                temp_f=read_temperature(args.temp, p.bare_degree) if args.temp else None,
            )
        )
    return call.done(
        lambda p: places_.add(
            p,
            " ".join(args.name),
            args.climate,
            args.inside,
            read_temperature(args.temp, p.bare_degree) if args.temp else None,
            args.capacity,
        )
    )


def _reading(p: Pantry, args: argparse.Namespace) -> PutUpReading:
    line = " ".join(args.line).strip()
    flags = {
        name: getattr(args, name)
        for name in (
            "food",
            "method",
            "size",
            "container",
            "place",
            "made",
            "note",
            "group",
            "acidity",
        )
        if getattr(args, name)
    }
    if line:
        if flags or args.count is not None or args.process:
            raise BadInput("Give either a line or flags, not both; the line takes key=value words.")
        return putup_.read(p, line)
    if not flags:
        raise BadInput(
            'Say what was put up: pantry-tui putup "7 jars peaches, boiling-water canned, larder".'
        )
    return putup_.from_flags(
        p,
        count=1 if args.count is None else args.count,
        process=key_values(args.process),
        **flags,
    )


def putup(call: Call) -> int:
    with call.pantry() as p:
        reading = _reading(p, call.args)
        if not call.args.dry_run:
            made = putup_.put_up(p, reading)
            return call.say(jsonable.putup(made), out.putup(made))
        try:
            made = putup_.preview(p, reading)
        except PantryError:
            call.say(
                {"code": "", "containers": [], "read_as": jsonable.reading(reading)},
                out.reading(reading),
            )
            raise
    return call.say(jsonable.putup(made), out.putup(made))


def due(call: Call) -> int:
    within = read_span(call.args.within) if call.args.within else None
    with call.pantry() as p:
        rows = view.due(p, within, call.args.place)
    return call.say(jsonable.due(rows), out.due(rows))


def shelves(call: Call) -> int:
    with call.pantry() as p:
        found = view.shelves(p, call.args.place)
    return call.say(jsonable.shelves(found), out.shelves(found))


def find(call: Call) -> int:
    text = " ".join(call.args.text)
    with call.pantry() as p:
        rows = view.find(p, text)
    lines = out.due(rows) if rows else [f"Nothing in store matches {text!r}."]
    return call.say(jsonable.due(rows), lines)


def show(call: Call) -> int:
    with call.pantry() as p:
        found = view.show(p, call.args.code)
    return call.say(jsonable.batch(found), out.batch(found))


def log(call: Call) -> int:
    with call.pantry() as p:
        lines = logbook.log(p, call.args.code)
    return call.say(lines, [clean(line) for line in lines] or ["Nothing has happened yet."])


def keeps(call: Call) -> int:
    from pantry_tui.reference.tables import load_tables
    from pantry_tui.services.lookup.shelf_life import keeps as published

    args = call.args
    answer = published(
        load_tables(),
        args.method,
        " ".join(args.food),
        climate=args.climate,
        temp_f=read_temperature(args.temp) if args.temp else None,
        state=args.state,
        made=read_date(args.made, call.today) if args.made else None,
    )
    return call.say(answer, out.keeps(answer))


def use(call: Call) -> int:
    amount = " ".join(call.args.amount) or None
    return call.done(lambda p: act.use(p, call.args.code, amount, call.args.any))


def open_(call: Call) -> int:
    return call.done(lambda p: act.open_(p, call.args.code))


def thaw(call: Call) -> int:
    return call.done(lambda p: act.thaw(p, call.args.code, call.args.how))


def finish(call: Call) -> int:
    return call.done(lambda p: act.finish(p, call.args.code))


def move(call: Call) -> int:
    args = call.args
    return call.done(lambda p: act.move(p, args.code, " ".join(args.place), args.count))


def give(call: Call) -> int:
    args = call.args
    return call.done(lambda p: act.give(p, args.code, args.count, args.to))


def lose(call: Call) -> int:
    return call.done(lambda p: act.lose(p, call.args.code, call.args.count))


def discard(call: Call) -> int:
    args = call.args
    return call.done(lambda p: act.discard(p, args.code, args.count, args.why))


def undo(call: Call) -> int:
    return call.done(act.undo)
