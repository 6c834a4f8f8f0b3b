"""The command line: read the words, call the verb, print, and never show a traceback.

Neither the screen library nor the unit library is loaded here; a verb that needs one loads it.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any, NoReturn

from pantry_tui import __version__
from pantry_tui.cli import books, care, verbs
from pantry_tui.cli import week as cli_week
from pantry_tui.cli.call import Call, Verb
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput, PantryError


class _Parser(argparse.ArgumentParser):
    """One sentence on an error, where argparse prints the whole usage."""

    def error(self, message: str) -> NoReturn:
        raise BadInput(f"{message[:1].upper()}{message[1:]}; see `{self.prog} --help`.")


def _shared(parser: argparse.ArgumentParser) -> None:
    """Flags that may stand before or after the verb."""
    none: Any = argparse.SUPPRESS
    parser.add_argument("--store", default=none, metavar="PATH", help="the store file")
    parser.add_argument("--today", default=none, metavar="YYYY-MM-DD", help="take this as today")
    parser.add_argument("--json", action="store_true", default=none, help="answer in JSON")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="pantry-tui",
        description="What stands where, how long it keeps, what to eat first. "
        "Without a verb: the app.",
        allow_abbrev=False,
    )
    _shared(parser)
    parser.add_argument("--version", action="version", version=__version__)
    commands = parser.add_subparsers(dest="verb", metavar="verb", parser_class=_Parser)

    def verb(name: str, do: Verb, about: str) -> argparse.ArgumentParser:
        made = commands.add_parser(name, help=about, description=about, allow_abbrev=False)
        _shared(made)
        made.set_defaults(do=do)
        return made

    _stores(verb)
    _looking(verb)
    _marking(verb)
    _reference(verb)
    _signs(verb)
    _rounds(verb)
    _paper(verb)
    _process(verb)
    _keys(verb)
    cli_week.add(verb, _whole)
    books.words(verb, _whole)
    return parser


def _stores(verb: Any) -> None:
    it = verb("init", verbs.init, "Make a new store; never overwrites")
    it.add_argument("--altitude", metavar="1800ft", default="0ft")
    it.add_argument("--people", type=_whole, default=2)
    it.add_argument("--units", choices=("us", "metric"), default="us")
    it.add_argument("--demo", action="store_true", help="fill it with the demo household")

    it = verb("demo", verbs.demo, "The app on a throw-away demo store")
    it.add_argument("--init", metavar="PATH", help="write a demo store there instead")

    it = verb("place", verbs.place, "Add a place, or list the places")
    it.add_argument("what", choices=("add", "change", "list"))
    it.add_argument("name", nargs="*")
    it.add_argument("--climate", help="room, pantry, cellar, fridge or freezer")
    it.add_argument("--in", dest="inside", metavar="PLACE")
    it.add_argument("--temp", metavar="55F")
    it.add_argument("--capacity", type=_whole, metavar="N")

    it = verb("putup", verbs.putup, "Put up a batch, from a line or from flags")
    it.add_argument("line", nargs="*", help='"7 pint jars runner beans, pressure canned, shelf 2"')
    for flag in (
        "food",
        "method",
        "size",
        "container",
        "place",
        "made",
        "note",
        "group",
        "acidity",
    ):
        it.add_argument(f"--{flag}", default="")
    it.add_argument("--count", type=_whole)
    it.add_argument("--process", action="append", default=[], metavar="KEY=VALUE")
    it.add_argument("--dry-run", action="store_true", help="only say what was understood")


def _looking(verb: Any) -> None:
    it = verb("due", verbs.due, "Everything, the nearest date first")
    it.add_argument("--within", metavar="30d")
    it.add_argument("--place")
    it = verb("shelves", verbs.shelves, "Stock by place")
    it.add_argument("--place")
    it = verb("find", verbs.find, "Search food, method, place, code and note")
    it.add_argument("text", nargs="+")
    it = verb("show", verbs.show, "One batch: containers, dates, why, sources, history")
    it.add_argument("code")
    it = verb("log", verbs.log, "What happened, oldest first")
    it.add_argument("code", nargs="?")
    it = verb("keeps", verbs.keeps, "Published keeping limits, with sources")
    it.add_argument("method")
    it.add_argument("food", nargs="+")
    it.add_argument("--in", dest="climate", metavar="CLIMATE")
    it.add_argument("--temp", metavar="60F")
    it.add_argument("--state", help="sealed, open, thawed or working")
    it.add_argument("--made", metavar="DATE", help="day 0 of that state")


def _marking(verb: Any) -> None:
    it = verb("use", verbs.use, "Eat the oldest, or an amount of a bulk one")
    it.add_argument("code", help="7C, or 7C/3 for that very jar")
    it.add_argument("amount", nargs="*", default=[], help="how many, or 2 lb")
    it.add_argument("--any", action="store_true", help="say nothing of older jars")
    for name, do, about in (
        ("open", verbs.open_, "Open the oldest sealed one"),
        ("finish", verbs.finish, "A working batch is done"),
    ):
        verb(name, do, about).add_argument("code")
    it = verb("thaw", verbs.thaw, "Thaw the oldest frozen one")
    it.add_argument("code")
    it.add_argument("--how", choices=("fridge", "cold water", "microwave"), default="fridge")
    it = verb("move", verbs.move, "Move to another place")
    it.add_argument("code")
    it.add_argument("place", nargs="+")
    it.add_argument("--count", type=_whole)
    it = verb("give", verbs.give, "Give away")
    it.add_argument("code")
    it.add_argument("count", nargs="?", type=_whole)
    it.add_argument("--to", default="")
    it = verb("lose", verbs.lose, "Gone, and nobody knows how")
    it.add_argument("code")
    it.add_argument("count", nargs="?", type=_whole)
    it = verb("discard", verbs.discard, "Throw away, with the reason")
    it.add_argument("code")
    it.add_argument("count", nargs="?", type=_whole)
    it.add_argument("--why", default="")
    it = verb("correct", care.correct, "Put the record of a batch right")
    it.add_argument("code")
    it.add_argument("--made", metavar="DATE", help="or unknown")
    it.add_argument("--size")
    it.add_argument("--note")
    it.add_argument("--process", action="append", default=[], metavar="KEY=VALUE")
    verb("undo", verbs.undo, "Take back the last thing done")


def _rounds(verb: Any) -> None:
    it = verb("round", care.round_, "A stock check: counts in, differences out")
    it.add_argument("place", nargs="?", help="without one: which place to count next")
    it.add_argument("--seen", nargs="+", action="extend", default=[], metavar="CODE=N")


def _paper(verb: Any) -> None:
    it = verb("sheet", care.sheet, "A sheet for the door: due, opened, week, outage, or a place")
    it.add_argument("what", nargs="+")
    it.add_argument("--html", action="store_true")
    it = verb("labels", care.labels, "Lid labels; without codes, for what was put up today")
    it.add_argument("codes", nargs="*")
    it.add_argument("--html", action="store_true")
    it = verb("calendar", care.calendar, "All dates ahead as a calendar file (RFC 5545)")
    it.add_argument("file")


def _keys(verb: Any) -> None:
    verb("keys", care.keys, "Every key of the app, by command id")


def _process(verb: Any) -> None:
    it = verb("process", care.process, "The tested canning process, or a refusal")
    it.add_argument("food", nargs="+")
    it.add_argument("--jar", required=True, help="half-pint, pint, quart ...")
    it.add_argument("--canner", required=True, help="boiling-water, dial or weighted")
    it.add_argument("--pack", help="hot or raw")
    it.add_argument("--altitude", metavar="4500ft", help="default: your store's, else 0")


def _reference(verb: Any) -> None:
    it = verb("reading", care.reading, "A place's temperature, read off")
    it.add_argument("place")
    it.add_argument("temp", metavar="41F")
    it.add_argument("--rh", type=_whole, metavar="PERCENT")
    it.add_argument("--at", metavar="DATE")
    it = verb("outage", care.outage, "A power cut: every item of a fridge or freezer")
    it.add_argument("place")
    it.add_argument("--from", dest="start", required=True, metavar="18:00")
    it.add_argument("--to", dest="end", required=True, metavar="TIME")
    load = it.add_mutually_exclusive_group()
    load.add_argument("--full", action="store_true", help="the freezer was full")
    load.add_argument("--half", action="store_true", help="half full, as when nobody knows")
    it.add_argument("--max-temp", metavar="45F", help="the warmest it is known to have been")
    it.add_argument("--ice", action="store_true", help="there are ice crystals left")
    it.add_argument("--no-ice", action="store_true", help="there are none")
    it.add_argument("--dry-run", action="store_true", help="judge and book nothing")
    it = verb("own", care.own, "Foods and rules of your own; stricter only, for safety")
    kinds = it.add_subparsers(dest="what", required=True, parser_class=_Parser)
    one = kinds.add_parser("food", help="a food the tables do not have")
    _shared(one)
    one.add_argument("name", nargs="+")
    one.add_argument("--group", required=True)
    one.add_argument("--acidity", required=True)
    one.add_argument("--also", action="append", default=[], help="another name for it")
    one = kinds.add_parser("rule", help="how long it keeps with you")
    _shared(one)
    one.add_argument("method")
    one.add_argument("food", nargs="+")
    one.add_argument("--in", dest="climate", required=True, metavar="CLIMATE")
    one.add_argument("--state", default="sealed")
    one.add_argument("--keeps", required=True, metavar="SPAN", help="10 days, 3 weeks, 6 months")
    one.add_argument("--kind", default="quality", help="quality or safety")
    one.add_argument("--why", default="")
    _shared(kinds.add_parser("list", help="what you added"))


def _signs(verb: Any) -> None:
    it = verb("sign", care.sign, "Something seen on a jar: the verdict and what to do")
    it.add_argument("code")
    it.add_argument("sign", nargs="+", help='what you see, or "looks sound"')
    it = verb("signs", care.signs, "The signs known, by method")
    it.add_argument("method", nargs="*")
    it = verb("recall", care.recall, "Where all of a batch is or went, and to whom")
    it.add_argument("code")


def _whole(text: str) -> int:
    if not text.isascii() or not text.isdigit() or len(text) > 6:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no whole number")
    return int(text)


def _today(args: argparse.Namespace) -> date:
    text = getattr(args, "today", None) or os.environ.get("PANTRY_TODAY")
    if not text:
        return date.today()
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise BadInput(f"{text[:40]!r} is no date: write --today 2026-11-25.") from None


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns the exit code: 0 done, 1 refused, 2 bad input."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")  # a terminal without UTF-8 still gets its words
    try:
        args = _parser().parse_args(argv)
        store = getattr(args, "store", None)
        call = Call(
            args, _today(args), Path(store) if store else None, getattr(args, "json", False)
        )
        return getattr(args, "do", verbs.app)(call)
    except PantryError as error:
        print(clean(error.message), file=sys.stderr)
        return error.code
    except BrokenPipeError:
        # The reader left (`| head`); nothing is wrong, and Python must not complain at exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        return 130
    except Exception as error:  # the last net: a person gets a sentence, a developer the rest
        if os.environ.get("PANTRY_DEBUG"):
            raise
        print(
            f"Something is wrong inside the program ({type(error).__name__}): nothing was "
            "booked; run again with PANTRY_DEBUG=1 and report what it prints.",
            file=sys.stderr,
        )
        return 1
