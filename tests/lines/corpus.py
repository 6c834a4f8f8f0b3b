"""Reads corpus.tsv and holds a reading against what a line should be read as."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import cache
from pathlib import Path

from pantry_tui.core.amounts import read_amount
from pantry_tui.core.line.vessels import one
from pantry_tui.core.words import Climate, Method
from pantry_tui.errors import BadInput
from pantry_tui.reference.ambiguous import either
from pantry_tui.reference.compose import composer
from pantry_tui.reference.names import find_method
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.line import Kitchen, read_line
from pantry_tui.services.rows import PutUpReading

TODAY = date(2026, 11, 26)
PLACES = {
    "basement": Climate.ROOM, "shelf 1": Climate.ROOM, "shelf 2": Climate.ROOM,
    "larder": Climate.PANTRY, "cellar": Climate.CELLAR, "fridge": Climate.FRIDGE,
    "freezer": Climate.FREEZER, "chest freezer": Climate.FREEZER,
}  # fmt: skip


@dataclass(frozen=True)
class Case:
    """One line of the corpus. `want` are its expectations by their letters."""

    kitchen: str
    line: str
    want: dict[str, str]


@cache
def cases() -> tuple[Case, ...]:
    found = []
    path = Path(__file__).with_name("corpus.tsv")
    for text in path.read_text(encoding="utf-8").splitlines():
        if text.startswith("#") or not text.strip():
            continue
        kitchen, line, want = text.split("\t")
        pairs = (one.split("=", 1) for one in want.split("; "))
        found.append(Case(kitchen, line, {key.strip(): value for key, value in pairs}))
    return tuple(found)


@cache
def kitchen(kind: str) -> Kitchen:
    tables = load_tables()

    def says(food: str) -> Method | None:
        known = tables.food_called(food)
        return Method(known.says) if known is not None and known.says else None

    return Kitchen(
        TODAY, {name: name for name in PLACES}, composer(tables), find_method, PLACES,
        "us" if kind == "us" else "metric", says,
    )  # fmt: skip


def read(case: Case) -> tuple[PutUpReading, set[str]]:
    """The reading, and what is asked: by the reader, of a word for two foods, or for want of it."""
    where = kitchen(case.kitchen)
    reading, typed = read_line(case.line, where)
    asked = {ask.about for ask in reading.asks}
    known = load_tables().facts(reading.food)
    if typed and either(typed, reading.method, where.units) is not None:
        asked.add("food")
    if not reading.food or (known is None and not reading.group):
        asked.add("food")
    if reading.method is None:
        asked.add("method")
    return reading, asked


def _same_amount(want: str, found: str) -> bool:
    if want == found:
        return True
    if not found:
        return False
    try:
        a, b = (read_amount(_plain(one)) for one in (want, found))
    except BadInput:
        return False
    both = {a[1], b[1]}
    if both == {"fl oz", "oz"}:
        return a[0] == b[0]
    return a == b or _grams(a) == _grams(b) != 0


def _plain(text: str) -> str:
    text = text.replace("half-", "1/2 ")
    for word in ("pint", "quart", "gallon"):
        if text == word:
            return f"1 {word}"
    if " lb " in text and text.endswith("oz"):
        pounds, ounces = text.split(" lb ")
        return f"{Fraction(pounds) + Fraction(ounces.split()[0]) / 16} lb"
    text = text.replace(" cl", "0 ml").replace(" gal", " gallon").replace("gallonlon", "gallon")
    return f"{float(text.split()[0]):g} {text.split()[1]}" if "." in text.split()[0] else text


def _grams(amount: tuple[Fraction, str]) -> float:
    each = {"g": 1.0, "kg": 1000.0, "ml": 0.001, "l": 1.0}.get(amount[1], 0.0)
    return round(float(amount[0]) * each, 6)


def wrong(case: Case) -> list[str]:
    """What is read cleanly and is not what was meant; asked about is not wrong."""
    found, asked = read(case)
    want, process = case.want, dict(found.process)
    bad: list[str] = []

    def off(about: str, what: str, wanted: object, got: object) -> None:
        if about not in asked:
            bad.append(f"{what} {got!r} for {wanted!r}")

    if "f" in want and found.food != want["f"]:
        off("food", "food", want["f"], found.food)
    method = want.get("m", "")
    if method not in ("", "?") and (found.method or "") != method:
        off("method", "method", method, str(found.method))
    if (method in ("", "?") or "method" in want.get("ask", "")) and found.method is not None:
        bad.append(f"method {found.method} for a question")
    if "n" in want and "p" not in want and str(found.count) != want["n"]:
        off("count", "count", want["n"], found.count)
    if "p" in want and str(found.count) != want["p"]:
        off("count", "pieces", want["p"], found.count)
    if "v" in want:
        vessel = found.container.removeprefix("small ").removeprefix("large ")
        held = one(vessel.split(" of ")[0]) or ("jar" if "pint" in found.size or found.size else "")
        held = {"boxe": "box", "dishe": "dish", "bunche": "bunch"}.get(held, held)
        if held != want["v"] and not (want["v"] == "jar" and not found.container):
            off("vessel", "vessel", want["v"], found.container)
    size = want.get("s") or want.get("c")
    got = found.size or process.get("amount", "")
    if " of " in found.container:
        got = f"{found.container.split(' of ')[1]} pieces"
    if size and not _same_amount(size, got) and not {"contents", "size"} & asked:
        bad.append(f"size {got!r} for {size!r}")
    if want.get("l", "") != found.place and "place" not in want.get("ask", ""):
        off("place", "place", want.get("l", ""), found.place)
    made = "unknown" if found.made is None else found.made.isoformat()
    if made != want.get("d", TODAY.isoformat()) and "made" not in want.get("ask", ""):
        off("made", "made", want.get("d", "today"), made)
    return bad


def asked_as_it_should(case: Case) -> bool:
    """Whether what is asked is what should be, and what is not understood is named so."""
    found, asked = read(case)
    want = {one for one in case.want.get("ask", "").split(",") if one}
    if case.want.get("m") == "?" or "m" not in case.want:
        want.add("method")
    loose = {"contents": {"contents", "size", "vessel"}, "size": {"size", "contents", "vessel"}}
    for about in want:
        if about == "size" and not found.size and "size" not in asked:
            continue  # a jar without a size is no question of the line
        if about == "contents" and not found.size and "amount" not in dict(found.process):
            continue
        if not loose.get(about, {about}) & asked:
            return False
    named = " ".join((*found.unread, found.note)).lower()
    unread = [one.lower() for one in case.want.get("un", "").split("|") if one]
    if not all(one in named for one in unread):
        return False
    extra = asked - want - {"size", "vessel"}
    return not extra and (bool(unread) or not found.unread)
