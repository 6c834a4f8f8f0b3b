"""What the counts, sizes and vessels of a put-up line come to.

What could be two things is asked about, and is kept out of the reading: "2 kg in 4 bags" may be in
each or in all.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction

from pantry_tui.core.line.amounts import Measured
from pantry_tui.core.line.numbers import Said
from pantry_tui.core.line.vessels import BIG, BY_CROP, HOW_BIG, JAR_UNITS, UNSURE, plural
from pantry_tui.core.line.vessels import one as single

#: A weight that one jar or bag holds, rather than all of them together.
_SMALL = {"g": Fraction(500), "oz": Fraction(16), "lb": Fraction(1), "kg": Fraction(1, 2)}
#: Exact by what the units are.
_FINER = {"lb": (16, "oz"), "kg": (1000, "g"), "l": (1000, "ml")}


@dataclass
class Held:
    """What was found: `count` containers (None: nobody said), the `size` of each and its `vessel`,
    an `amount` that is no vessel's size, or `pieces`. `asks` are (about, typed, choices, why)."""

    count: int | None = None
    size: str = ""
    vessel: str = ""
    amount: str = ""
    pieces: bool = False
    inner: str = ""  # " of 5" behind packs
    part: str = ""  # the half of "half a pumpkin"
    piece: str = ""  # the piece of "a piece of pumpkin"
    begun: str = ""  # the half of "half a jar"
    vacuum: bool = False  # "2 vacuum packs"
    asks: list[tuple[str, str, tuple[str, ...], str]] = field(default_factory=list)


@dataclass
class Found:
    numbers: list[Said] = field(default_factory=list)
    sizes: list[Measured] = field(default_factory=list)  # of a vessel, or of each
    loose: list[Measured] = field(default_factory=list)  # of nobody knows what
    in_all: bool = False  # it is said of all of them together
    behind: bool = False  # the first of them stands behind a vessel
    labels: list[str] = field(default_factory=list)  # sizes by a maker's number
    parts: list[str] = field(default_factory=list)  # "half a lamb"
    begun: list[str] = field(default_factory=list)  # "half a sack of potatoes"
    piece: str = ""  # "2 pieces"
    uncounted: bool = False  # "pints", and no number
    many: str = ""  # "12 lb bags", and no number of bags
    jars: list[tuple[Said, Measured]] = field(default_factory=list)  # "7 pints"
    vessels: list[tuple[str, str]] = field(default_factory=list)  # name, as typed
    pieces: int = 0
    alone: list[Fraction] = field(default_factory=list)  # numbers of no vessel
    a_vessel: bool = False  # "a box"


def is_small(amount: Measured) -> bool:
    """A weight that one jar or bag holds, rather than all of them."""
    return amount.number <= _SMALL.get(amount.unit, 0)


def settle(found: Found, units: str) -> Held:
    held = Held()
    numbers = list(found.numbers)
    if found.jars:
        _jars(found, held, numbers)
    vessels = list(dict.fromkeys(name for name, _ in found.vessels))
    if "jar" in vessels and any(name.endswith(" jar") for name in vessels):
        vessels.remove("jar")  # said twice: "Fowlers no. 27 jars"
    typed = " ".join(said for _, said in found.vessels)
    held.vacuum = re.search(r"(?i)\bvac(uum)?\b", typed) is not None
    if len(vessels) > 1:
        held.asks.append(
            ("vessel", typed, tuple(vessels), "It stands in one kind of vessel: say which.")
        )
    held.vessel = vessels[0] if len(vessels) == 1 else ""
    _number(numbers, held)
    if found.a_vessel and held.vessel and found.alone == [held.count]:
        held.count, held.inner = 1, f" of {held.count}"  # "8 celeriac in a box"
    parted = _parted(found) if found.many and not numbers else None
    if parted is not None:
        held.count = parted
        found.loose.clear()
    elif found.many and not numbers:
        each = found.many.replace(" ", "-", 1)
        why = f"{found.many}: how many, and how big? Write 3 {each}, for example."
        held.asks.append(("count", found.many, (), why))
    if found.uncounted and not numbers:
        held.asks.append(("count", "", (), "How many? Give a number, 1 to 999."))
    _size(found, held)
    for label in found.labels:
        held.asks.append(("size", label, (), f"{label} is a maker's size: say how much it holds."))
    held.part, held.piece = next(iter(found.parts), ""), found.piece
    held.begun = next(iter(found.begun), "")
    for part in found.parts if not (held.amount or held.size) else ():
        why = f"How much does the {part} weigh? Give a weight."
        held.asks.append(("contents", part, (), why))
    _unsure(held, typed, units)
    if held.vessel in BY_CROP:
        held.asks.append(
            (
                "contents",
                held.vessel,
                (),
                f"How much is a {held.vessel} of it? Tables differ: give a weight.",
            )
        )
    if held.vessel:
        big = HOW_BIG.get(typed.split(" ")[0].lower(), "")
        held.vessel = f"{big} {plural(held.vessel, held.count or 1)}{held.inner}".strip()
    elif held.count is not None and not held.size and not held.amount:
        held.pieces = True
    return held


def _jars(found: Found, held: Held, numbers: list[Said]) -> None:
    """ "7 pints": seven jars; "5 quarts and 3 pints" are two batches; behind a count and a vessel
    it is the size ("12 bags, 1 quart")."""
    sizes = dict.fromkeys(size.unit for _, size in found.jars)
    if len(sizes) > 1 or (len(found.jars) > 1 and found.jars[0] != found.jars[1]):
        held.asks.append(
            (
                "count",
                " ".join(f"{_plain(n.value)} {size.unit}" for n, size in found.jars),
                (),
                "Jars of two sizes are two batches: put each up by itself.",
            )
        )
        found.sizes.clear()
        return
    number, size = found.jars[0]
    if found.vessels and not numbers and _one_big(found.vessels):
        found.sizes.append(Measured(size.stop, number.value or Fraction(1), size.unit))
        return  # "5 gallons cider, carboy"
    if found.vessels and any(not one.word for one in numbers):
        found.sizes.append(Measured(size.stop, number.value or Fraction(1), size.unit))
        return
    if number.value is None or number.value.denominator == 1:
        numbers.append(number)
        found.sizes.append(size)
    else:
        found.sizes.append(Measured(size.stop, number.value, size.unit))


def _one_big(vessels: list[tuple[str, str]]) -> bool:
    """Whether they are one vessel that holds many quarts."""
    name, typed = vessels[0]
    return len(vessels) == 1 and name in BIG and single(typed.split(" ")[-1].lower()) == name


def _plain(value: Fraction | None) -> str:
    return "?" if value is None else f"{float(value):g}"


def _number(numbers: list[Said], held: Held) -> None:
    real = [one for one in numbers if not one.word] or numbers
    values = list(dict.fromkeys(one.value for one in real))
    if not values:
        return
    value = values[0]
    if len(values) > 1:
        said = " and ".join(_plain(one) for one in values)
        held.asks.append(("count", said, (), f"How many? The line says {said}."))
    elif value is None or value.denominator != 1 or not 1 <= value <= 999:
        held.asks.append(("count", _plain(value), (), "How many? Give a number, 1 to 999."))
    else:
        held.count = int(value)


def _size(found: Found, held: Held) -> None:
    sizes = list(dict.fromkeys((one.number, one.unit) for one in found.sizes))
    many = (held.count or 1) > 1
    unsure = next((each for each in (*found.sizes, *found.loose) if each.unsure), None)
    if unsure is not None:
        plain = re.sub(r"[.,]", "", unsure.unsure)
        choices = (unsure.text, f"{plain} {unsure.unit}")
        why = f"{unsure.unsure} {unsure.unit} could be {' or '.join(choices)}: write it plainly."
        held.asks.append(("contents", unsure.unsure, choices, why))
        return
    if len(sizes) > 1:
        said = " and ".join(one.text for one in found.sizes)
        held.asks.append(("contents", said, (), f"How much is in each? The line says {said}."))
        return
    if found.sizes:
        size = found.sizes[0]
        held.size = size.text if size.unit else ""
        held.inner = "" if size.unit else f" of {_plain(size.number)}"
        if found.loose and not many:
            held.amount = found.loose[0].text
        elif found.loose:
            _ask_each(found.loose[0], held)
        return
    if not found.loose:
        return
    loose = found.loose[0]
    if len(found.loose) > 1:
        said = " and ".join(one.text for one in found.loose)
        held.asks.append(("contents", said, (), f"How much is it? The line says {said}."))
    elif many and found.in_all and (part := _share(loose, held)):
        held.size = part
    elif many and found.in_all:
        pile = (str(held.count), loose.text)
        why = f"A pile is drawn from by number or by weight: write {' or '.join(pile)} of it."
        held.asks.append(("contents", " ".join(pile), pile, why))
    elif many and (held.vessel or held.count):
        half = loose.text.startswith("half-")
        each = held.vessel and (found.behind or half) and (not loose.is_weight or is_small(loose))
        if each:
            held.size = loose.text
        else:
            _ask_each(loose, held)
    elif held.vessel and held.count is not None and not loose.is_weight:
        held.size = loose.text
    else:
        held.amount = loose.text


def _parted(found: Found) -> int | None:
    """How many packs so much fills to the last ounce or gram: "12 lb in 1 lb packs"; None where
    something would be left over, which is asked about."""
    if len(found.loose) != 1 or len(found.sizes) != 1:
        return None
    (whole, kind), (each, other) = (_finer(one) for one in (found.loose[0], found.sizes[0]))
    many = whole / each if each and kind == other else Fraction(0)
    return int(many) if many.denominator == 1 and 1 < many <= 999 else None


def _finer(one: Measured) -> tuple[Fraction, str]:
    """In ounces, grams and millilitres; any other unit as it is."""
    times, unit = _FINER.get(one.unit, (1, one.unit))
    return one.number * times, unit


def _share(loose: Measured, held: Held) -> str:
    """What each holds of so much in all; "" of loose pieces that nobody keeps one by one."""
    each = loose._replace(number=loose.number / (held.count or 1), said="")
    return each.text if held.vessel or not is_small(each) else ""


def _ask_each(loose: Measured, held: Held) -> None:
    where = held.vessel or ("jar" if loose.unit in JAR_UNITS else "pack")
    n = held.count or 1
    each = loose.text.replace(" ", "-")
    choices = (f"{n} {each} {plural(where, n)}", f"{loose.text} in all")
    why = (
        f"Is {loose.text} in each of the {n}, or in all? For each, write "
        f"{n} {each} {plural(where, n)}; else {loose.text} in all."
    )
    held.asks.append(("contents", loose.text, choices, why))


def _unsure(held: Held, typed: str, units: str) -> None:
    """Makers' jars, jelly jars, and pints of a metric kitchen, whose pint may be 568 ml."""
    low = typed.lower()
    maker = next((one for one in UNSURE if one in low), "")
    if maker:
        held.asks.append(
            (
                "vessel",
                typed,
                ("screw-top jar", "clip-top jar"),
                "Say whether they have a screw lid or a clip and a glass lid: the advice differs.",
            )
        )
    if held.vessel == "jelly jar":
        held.vessel = "jar"
        if not held.size:
            held.asks.append(
                ("size", typed, ("4 oz", "8 oz", "12 oz"), "How big are the jelly jars?")
            )
    if units == "metric" and held.size in ("pint", "half-pint", "1 1/2 pint") and held.vessel:
        choices = ("473 ml", "568 ml") if held.size == "pint" else ("236 ml", "284 ml")
        why = (
            f"That size is {choices[0]} in one country and {choices[1]} in another: "
            f"write {' or '.join(choices)}."
        )
        held.asks.append(("size", held.size, choices, why))
