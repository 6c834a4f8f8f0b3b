"""The verbs of the week: what to eat when, how much the household eats, who is at table, dishes."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Any

from pantry_tui.cli import show as out
from pantry_tui.cli.call import Call
from pantry_tui.core.dates import read_coming, read_date
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done


def add(verb: Any, whole: Callable[[str], int]) -> None:
    """The words of these verbs."""
    it = verb("week", week, "What to eat this week")
    it.add_argument("--from", dest="start", metavar="DATE", help="seven days from that one")
    it.add_argument("--unknown", action="store_true", help="also what has no published figure")
    one = it.add_mutually_exclusive_group()
    one.add_argument("--accept", action="store_true", help="keep this plan")
    one.add_argument("--anew", action="store_true", help="plan anew, without accepted and wished")
    one.add_argument("--eaten", metavar="DATE", help="book all of that day")
    one.add_argument("--pin", metavar="CODE=DAY", help="eat it on that day")
    one.add_argument("--unpin", metavar="CODE", help="on any day again")
    one.add_argument("--swap", metavar="CODE", help="another food of its group instead")
    one.add_argument("--drop", metavar="CODE", help="a lid code or a food: not this week, or again")
    one.add_argument("--out", metavar="DAY", help="you eat out that day, or not after all")
    one.add_argument("--dish", metavar="NAME=DAY", help="cook that dish, or not after all")

    it = verb("appetite", appetite, "What you eat of the stores in a week, at most")
    it.add_argument("what", nargs="*", help="a food or group, then servings a person a week")
    it.add_argument("--people", type=whole, help="how many usually eat of them")
    it.add_argument("--meals", type=whole, help="main meals a week from the stores")

    it = verb("table", table, "Days away and guests: who sits at the table when")
    it.add_argument("what", choices=("away", "guests", "usual", "list"))
    it.add_argument("days", nargs="*", help="for guests how many eat; a day, or FIRST to LAST")

    it = verb("dish", dish, "Dishes of your own, for the week to plan")
    it.add_argument("what", choices=("add", "drop", "list"))
    it.add_argument("line", nargs="*", help='"bean soup = 4 runner beans, 4 chicken stock"')


def week(call: Call) -> int:
    from pantry_tui.services.plan import week as week_

    args = call.args
    start = read_coming(args.start, call.today) if args.start else None
    if args.eaten:
        day = read_date(args.eaten, call.today)
        return call.done(lambda p: week_.eaten(p, day))
    with call.pantry() as p:
        wished = _wish(p, call)
        if args.accept:
            week_.accept(p, start)
        found = week_.week(p, start, unknown=args.unknown)
    lines = [*(out.done(wished) if wished else ()), *out.week(found)]
    return call.say(jsonable.week(found), lines)


def _wish(p: Pantry, call: Call) -> Done | None:
    """What was said of the week, if anything."""
    from pantry_tui.services.plan import week as week_
    from pantry_tui.services.plan import wishes

    args = call.args
    if args.anew:
        return week_.forget(p)
    if args.pin:
        return wishes.pin(p, *_on_day(args.pin, call.today, "--pin 7C=friday"))
    if args.dish:
        return wishes.cook(p, *_on_day(args.dish, call.today, '--dish "bean soup=friday"'))
    if args.out:
        return wishes.out(p, read_coming(args.out, call.today))
    for text, do in (
        (args.unpin, wishes.unpin),
        (args.swap, wishes.swap),
        (args.drop, wishes.leave_out),
    ):
        if text:
            return do(p, text)
    return None


def _on_day(text: str, today: date, example: str) -> tuple[str, date]:
    name, equals, day = text.rpartition("=")
    if not (equals and name.strip() and day.strip()):
        raise BadInput(f"{text[:40]!r} names no day: write {example}.")
    return name.strip(), read_coming(day, today)


def appetite(call: Call) -> int:
    from pantry_tui.services.plan import appetite as appetite_

    args = call.args
    if args.people is not None:
        return call.done(lambda p: appetite_.set_people(p, args.people))
    if args.meals is not None:
        return call.done(lambda p: appetite_.set_meals(p, args.meals))
    if len(args.what) >= 2:
        *what, servings = args.what
        return call.done(lambda p: appetite_.set_ceiling(p, " ".join(what), servings))
    if args.what:
        raise BadInput("Say how much: pantry-tui appetite beets 1, or 0 for what nobody eats.")
    with call.pantry() as p:
        lines = [clean(line) for line in appetite_.listing(p)]
    return call.say(lines, lines)


def table(call: Call) -> int:
    from pantry_tui.services.plan import appetite as appetite_

    args = call.args
    if args.what == "list":
        with call.pantry() as p:
            days = list(appetite_.table(p))
        rows = [{"day": day.isoformat(), "people": people} for day, people in days]
        return call.say(rows, out.table_days(days))
    said = " ".join(args.days)
    line = said if args.what == "guests" else f"{args.what} {said}"
    return call.done(lambda p: appetite_.read_table(p, line))


def dish(call: Call) -> int:
    from pantry_tui.services.plan import dishes

    args = call.args
    line = " ".join(args.line)
    if args.what == "add":
        return call.done(lambda p: dishes.keep(p, line))
    if args.what == "drop":
        return call.done(lambda p: dishes.drop(p, line))
    with call.pantry() as p:
        found = dishes.dishes(p)
    rows = [{"name": one.name, "takes": [list(part) for part in one.takes]} for one in found]
    lines = [clean(dishes.say(one)) for one in found]
    hint = 'No dishes yet: pantry-tui dish add "bean soup = 4 runner beans, 4 chicken stock"'
    return call.say(rows, lines or [hint])
