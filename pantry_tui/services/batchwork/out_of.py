"""A line that begins with what it is taken out of: "half of 6A, freezer", "2 packs of 3A, freezer".
What it does not say of the food and how that is kept is as the older batch has it."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from pantry_tui.core.dataclass import replace
from pantry_tui.core.lidcode import is_code, normal_code
from pantry_tui.core.line.vessels import vessel as vessel_named
from pantry_tui.core.model import Batch
from pantry_tui.core.text import singular
from pantry_tui.core.words import Climate, Method
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Ask, PutUpReading, Source
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.turn import in_turn

Read = Callable[[Pantry, str], PutUpReading]

_NOTE = r"(?i)\bnote(?:=|:)"
_SHARE = r"a half|half|a third|a quarter|two thirds|three quarters|all|rest"
_OUT_OF = (
    r"(?i)(?:^|(?<=,))\s*(?:the\s+)?"
    rf"(?P<much>(?P<share>{_SHARE})|an?|one|[\d./½¼¾⅓⅔⅛]+(?: \d+/\d+)?\s*[a-z ]*?)"
    r"(?:\s+(?:of\s+)?(?:an?|the|one)?\s*(?P<vessel>[a-z]+))??"
    r"(?P<of>\s+of)?\s+(?P<code>\d[a-z0-9]{1,4}(?:/\d{1,4})?)(?![\w=])"
    r"(?:\s+in(?:to)?\s+(?P<into>\d[^,]*))?"
)


class Part(NamedTuple):
    """What a line is taken out of, and its other words."""

    code: str
    much: str
    vessels: str  # "1 pack", as the line has it; "" where it does not say
    rest: str


def take_part(p: Pantry, line: str) -> Part | None:
    """What a line says that it is taken out of, None where it names no batch so."""
    note = re.search(_NOTE, line)
    told = line[: note.start()] if note else line
    for found in re.finditer(_OUT_OF, told):
        code, slash, number = found["code"].partition("/")
        code = normal_code(code)
        here = p.batch(code) is not None
        if not (here or is_code(code)) or not (found["of"] or (here and found["share"])):
            continue
        much, count, vessel = _counted(found["much"], found["vessel"] or "")
        if vessel and not vessel_named(vessel):
            continue
        vessels = found["into"] or (f"{count} {vessel}" if vessel else "")
        return Part(f"{code}{slash}{number}", much, vessels, _without(line, found))
    return None


def _without(line: str, found: re.Match[str]) -> str:
    parts = (line[: found.start()].strip(" ,"), line[found.end() :].strip(" ,"))
    return ", ".join(filter(None, parts))


def _counted(much: str, vessel: str) -> tuple[str, str, str]:
    """("2 packs", "") -> "2", "2", "packs": so many whole ones; ("half", "pack") -> "half", "1",
    "pack"; ("a", "pack") -> one whole one."""
    much = " ".join(much.casefold().split())
    number, _, unit = much.partition(" ")
    if not vessel and unit and vessel_named(unit):
        much, vessel = number, unit
    if much in ("a", "an", "one", "1"):
        return "", "1", vessel
    count = much if vessel and much.isdigit() else "1"
    return {"rest": "all", "a half": "half"}.get(much, much), count, vessel


def read_part(p: Pantry, part: Part, read: Read) -> PutUpReading:
    """The reading of a line with what it is taken out of."""
    try:
        batch = batch_named(p, part.code)
    except BadInput as error:
        return PutUpReading(problems=(error.message,), asks=(Ask("code", part.code),))
    line = part.rest
    if p.facts(read(p, line).food) is None:
        vessel = singular((batch.size.split() or ["box"])[-1])
        line = ", ".join(filter(None, (f"{part.vessels or f'1 {vessel}'} {batch.food.name}", line)))
    reading = read_as(p, batch, line, read)
    return replace(reading, sources=(Source(part.code, part.much),))


def read_as(p: Pantry, batch: Batch, line: str, read: Read) -> PutUpReading:
    """The line, and beside it what it does not say of the food and how that is kept. Words that
    are understood only beside the food (the water of "boiling-water canned") are read so."""
    plain = read(p, line)
    frozen = plain.place and p.find_place(plain.place).climate is Climate.FREEZER
    food, method = batch.food.name, (Method.FROZEN if frozen else batch.method).value
    missing = [method] if plain.method is None else []
    missing += [] if plain.food and not _names_a_way(p, plain, read) else [food]
    first = read(p, ", ".join((*missing, line))) if missing else plain
    ways = () if _is_clear(first) else ([food], [method, food])
    others = (read(p, ", ".join((*said, line))) for said in ways)
    return next(filter(_is_clear, others), first)


def _is_clear(reading: PutUpReading) -> bool:
    return not (reading.problems or reading.unread)


def _names_a_way(p: Pantry, reading: PutUpReading, read: Read) -> bool:
    """Whether the food is but the name of the method: "jam" alone is a jam of several fruits."""
    return reading.method is not None and read(p, reading.method.value).food == reading.food


_HALF = re.compile(r"How much (?:is in the|does the) (?:half|quarter)\b")


def or_out_of_one(p: Pantry, reading: PutUpReading) -> PutUpReading:
    """Of a part of a vessel of which it is asked how much that is: how to say that it is a part of
    one that stands here."""
    if not any(_HALF.match(one) for one in reading.problems) or p.facts(reading.food) is None:
        return reading
    first = next(iter(in_turn(p, reading.food)), None)
    if first is None:
        return reading
    way = f"Or, where it is half of one that stands here: half of {first.code}."
    told = (f"{one} {way}" if _HALF.match(one) else one for one in reading.problems)
    return replace(reading, problems=tuple(told))
