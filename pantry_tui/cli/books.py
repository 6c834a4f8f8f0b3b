"""The verbs of the books: outlook, year, losses, taste, what is kept apart, what stands in."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from pantry_tui.cli import show_books as out
from pantry_tui.cli.call import Call
from pantry_tui.core.dates import read_date
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput
from pantry_tui.services.output import jsonable


def words(verb: Any, whole: Callable[[str], int]) -> None:
    """Declares the verbs; `whole` reads a whole number."""
    it = verb("outlook", outlook, "Will it last, what is lost, how much to put up")
    it.add_argument("--until", metavar="DATE", help="instead of each food's next harvest")
    it.add_argument("--margin", metavar="10%", help="so much on top of what is put up")
    it.add_argument("--years", type=whole, default=1, help="cover so many years, if it keeps")
    it = verb("year", year, "The year of each food: opening, made, gone, closing, eaten")
    it.add_argument("food", nargs="*", help="one food only")
    it = verb("losses", losses, "What was discarded and why, and what would save most")
    it.add_argument("--from", dest="start", metavar="DATE", help="only since that day")
    it = verb("taste", taste, "What was said of a batch at table")
    it.add_argument("code")
    it.add_argument("said", nargs="+", help="again, not-again or change, then a note")
    it = verb("reserve", reserve, "Keep some apart, for a gift or for somebody")
    it.add_argument("code")
    it.add_argument("count", nargs="?", type=whole, help="how many of the batch")
    it.add_argument("--for", dest="words", nargs="+", metavar="WHOM", help="gift, or a name")
    it.add_argument("--free", action="store_true", help="back to your own stock")
    it = verb("substitute", substitute, "What stands in for a food when its crop fails")
    it.add_argument("what", nargs="+", help="FOOD with FOOD ..., or list")


def outlook(call: Call) -> int:
    from pantry_tui.services.plan.outlook import outlook as look
    from pantry_tui.services.plan.putup_next import Ask

    args = call.args
    until = read_date(args.until, call.today) if args.until else None
    if until is not None and until <= call.today:
        raise BadInput("Look ahead: give a day after today.")
    if not 1 <= args.years <= 5:
        raise BadInput("Cover 1 to 5 years: write --years 2.")
    with call.pantry() as p:
        found = look(p, until, Ask(_share(args.margin), args.years))
    return call.say(jsonable.plain(found), out.outlook(found))


def _share(text: str | None) -> float:
    """("10%") -> 0.1; a bare number is a percentage too."""
    if text is None:
        return 0.0
    match = re.fullmatch(r"\s*(\d{1,3}(?:\.\d{1,2})?)\s*%?\s*", text)
    if match is None or float(match[1]) > 200:
        raise BadInput(f"{clean(text)[:40]!r} is no margin: write --margin 10%, up to 200%.")
    return float(match[1]) / 100


def year(call: Call) -> int:
    from pantry_tui.services.books.year import years

    with call.pantry() as p:
        rows = years(p, " ".join(call.args.food) or None)
    return call.say(jsonable.plain(rows), out.years(rows))


def losses(call: Call) -> int:
    from pantry_tui.services.books.losses import losses as lost

    since = read_date(call.args.start, call.today) if call.args.start else None
    with call.pantry() as p:
        found = lost(p, since)
    return call.say(jsonable.plain(found), out.losses(found, since))


def taste(call: Call) -> int:
    from pantry_tui.services.books import rating as taste_

    said, note = taste_.split(call.args.said)
    return call.done(lambda p: taste_.taste(p, call.args.code, said, note))


def reserve(call: Call) -> int:
    from pantry_tui.services.stock import reserve as reserve_

    args = call.args
    if args.free:
        if args.words:
            raise BadInput("Say --for or --free, not both.")
        return call.done(lambda p: reserve_.free(p, args.code, args.count))
    return call.done(
        lambda p: reserve_.reserve(p, args.code, args.count, " ".join(args.words or ["gift"]))
    )


def substitute(call: Call) -> int:
    from pantry_tui.services.plan import substitute as substitute_

    what = call.args.what
    if what == ["list"]:
        with call.pantry() as p:
            data = {food: list(others) for food, others in substitute_.substitutes(p).items()}
            lines = [clean(line) for line in substitute_.listing(p)]
        return call.say(data, lines or ["Nothing stands in for anything yet."])

    def do(p: Any) -> Any:
        return substitute_.set_substitutes(p, *substitute_.read_line(p, what))

    return call.done(do)
