"""How many, in what, and how much in each: "7 pint jars", "6 x 250 ml", "4 bags, 500 g each".

One phrase at a time, in any order that people use; core.line.held makes of them what was put up.
"""

from __future__ import annotations

from fractions import Fraction

from pantry_tui.core.line.amounts import Measured, measure_at
from pantry_tui.core.line.held import Found, Held, is_small, settle
from pantry_tui.core.line.numbers import SETS, Said, read_number
from pantry_tui.core.line.tokens import Kind, Line
from pantry_tui.core.line.vessels import HOW_BIG, JAR_UNITS, PIECES, one, plural, vessel

_EACH = frozenset({"each", "apiece", "per", "ea"})
#: In front of what each holds: "4 portions à 400 g".
_AT = frozenset({"à", "á", "@", "of"})
_TIMES = frozenset({"x", "×", "by", "times"})
#: Between a food and what it lies in: "onions on strings".
_LIES = frozenset({"in", "on", "into"})
#: Behind a weight of all of them together.
_IN_ALL = (("in", "all"), ("in", "total"), ("all", "together"), ("altogether",), ("total",))
#: In front of how many will eat it.
_FOR = frozenset({"for", "serves", "feeds"})
#: Words that also begin foods ("string beans") or mean something else: a vessel only behind a
#: number or an amount, or before "of".
_RISKY = frozenset(
    {"string", "stick", "roll", "side", "block", "wheel", "dish", "tub", "net", "bunch", "box",
     "tin", "bin", "braid", "tube", "bowl", "mould", "tray", "barrel", "crate", "peck", "pack",
     "log", "pat", "pot"}
)  # fmt: skip


def take_held(line: Line, units: str) -> Held:
    """Claims all that says how many and how much; `units` are the household's."""
    found = Found()
    asks = Held().asks
    i = 0
    while i < len(line.tokens):
        if not line.free[i]:
            i += 1
            continue
        stop = _phrase(line, i, found)
        if stop > i:
            line.claim(i, stop)
            i = stop
        else:
            i += 1
    held = settle(found, units)
    held.asks[:0] = asks
    return held


# -- one phrase: a number, an amount, a vessel, in any order that people use ----------------------


def _phrase(line: Line, i: int, found: Found) -> int:
    """Claims the phrase that begins at `i`; `i` where none does."""
    for read in (_label, _part_of, _times, _counted, _measured, _bare_vessel, _lone):
        stop = read(line, i, found)
        if stop > i:
            return stop
    return i


def _label(line: Line, i: int, found: Found) -> int:
    """ "No. 27 bottles", "#10 cans": a maker's number of a size."""
    at = i + (line.says(i, "#") or line.says(i, "no", ".") or line.says(i, "no"))
    number = line.number(at)
    if at == i or number is None or not _vessel_at(line, at + 1)[0]:
        return i
    found.labels.append(f"No. {line.tokens[at].said}")
    return _vessel_after(line, at + 1, found)


#: "half a", "half of an".
_OF_A = (("of", "a"), ("of", "an"), ("of",), ("a",), ("an",))
#: What looks like a vessel and is the food itself.
_CUT = frozenset({"wheel", "block", "loaf", "round"})


def _part_of(line: Line, i: int, found: Found) -> int:
    """ "half a lamb", "a quarter of beef": how much it weighs has to be said."""
    at = i + line.says(i, "a")
    if line.word(at) not in ("half", "quarter"):
        return i
    if at == i and read_number(line, i) is not None:
        return i
    of = next((size for words in _OF_A if (size := line.says(at + 1, *words))), 0)
    if measure_at(line, i) is not None:
        return i
    if _vessel_at(line, at + 1 + of)[0]:
        # Half a sack is a sack begun, and nothing in it was cut; of a wheel half was.
        whole = line.word(at + 1 + of) not in _CUT
        (found.begun if whole else found.parts).append(line.word(at))
        return at + 1
    if not of:
        return i
    found.parts.append(line.word(at))
    return at + 1 + of


def _times(line: Line, i: int, found: Found) -> int:
    """ "6 x 250 ml jars", "250 ml x 6", "x2", "500 g × 8"."""
    word = line.word(i)
    if word in _TIMES and word in ("x", "×"):
        number = read_number(line, i + 1)
        if number is not None:
            found.numbers.append(number)
            return number.stop
    number = read_number(line, i)
    if number is None or line.word(number.stop) not in ("x", "×"):
        return i
    inner = measure_at(line, number.stop + 1)
    if inner is None:
        other = read_number(line, number.stop + 1)
        if other is not None:  # "6 x 6 eggs": of what?
            found.numbers.append(Said(other.stop, None))
            return other.stop
        return number.stop + _keep(found, number)
    found.numbers.append(number)
    found.sizes.append(inner)
    return _vessel_after(line, inner.stop, found)


def _keep(found: Found, number: Said) -> int:
    found.numbers.append(number)
    return 1


def _counted(line: Line, i: int, found: Found) -> int:
    """A number, then a vessel or an amount: "7 jars", "3 40 lb crates", "7 pint jars"."""
    number = read_number(line, i)
    if number is None:
        return i
    at = number.stop
    pieces = PIECES.get(one(line.word(at)), 0)
    name, stop = _vessel_at(line, at)
    if name:
        found.numbers.append(number)
        found.vessels.append((name, _typed(line, at, stop)))
        found.a_vessel |= number.word
        return _each_after(line, stop, found)
    inner = measure_at(line, at)
    if inner is not None and inner.bare and inner.unit not in JAR_UNITS | {"l"}:
        return i  # "15 kg crates" are no fifteen
    if inner is not None and inner.bare and _broken(line, number, inner):
        return i  # "½ pint jars" are half-pints, and "1 pint jars" pints
    if inner is not None and not inner.bare and inner.text.startswith("half-"):
        name, stop = _vessel_at(line, inner.stop)
        if not name:
            found.jars.append((number, inner))
            return inner.stop
    if inner is not None and (not inner.bare or _vessel_at(line, inner.stop)[0]):
        name, stop = _vessel_at(line, inner.stop)
        if name and not (inner.bare and _one_of(line, stop) and not number.word):
            found.numbers.append(number)
            found.sizes.append(inner)
            return _vessel_after(line, inner.stop, found)
        if name:  # "5 gallon crock": five gallons of it
            return i
    if pieces and not number.word and _names_pieces(line, at):
        value = None if number.value is None else number.value * pieces
        found.numbers.append(Said(at + 1, value))
        found.pieces += 1
        if one(line.word(at)) in ("piece", "pc"):
            found.piece = "piece"
        return _each_after(line, at + 1, found)
    return i


def _broken(line: Line, number: Said, inner: Measured) -> bool:
    """Whether the number is of the size, since nobody counts vessels by it."""
    if number.value is None or number.word:
        return False
    name, stop = _vessel_at(line, inner.stop)
    several = bool(name) and not _one_of(line, stop)
    return number.value.denominator != 1 or (number.value == 1 and several)


def _one_of(line: Line, stop: int) -> bool:
    """Whether the vessel is said of one: "crock", not "crocks"."""
    word = line.tokens[stop - 1].text
    return one(word) == word


def _names_pieces(line: Line, i: int) -> bool:
    """ "12 heads", "4 legs": not "4 leg of lamb"."""
    return line.word(i) != "whole"


def _measured(line: Line, i: int, found: Found) -> int:
    """An amount, with or without a vessel: "40 lb sack", "500 g each", "7 pints", "2 kg"."""
    inner = measure_at(line, i)
    if inner is None:
        return i
    if inner.bare and not inner.is_weight and not _vessel_at(line, inner.stop)[0]:
        if inner.unit not in JAR_UNITS:
            return i
        # "pints salsa" and "tomatoes quarts 7": a size, and the number may stand behind it.
        after = read_number(line, inner.stop)
        found.sizes.append(inner)
        if after is not None and measure_at(line, inner.stop) is None:
            found.numbers.append(after)
            return after.stop
        found.uncounted = line.tokens[inner.stop - 1].text.endswith("s")
        return inner.stop
    if inner.bare and inner.is_weight:
        return i
    name, stop = _vessel_at(line, inner.stop)
    each = line.word(inner.stop) in _EACH
    if each:
        found.sizes.append(inner)
        return inner.stop + 1
    if line.word(inner.stop) in ("x", "×"):
        number = read_number(line, inner.stop + 1)
        if number is not None:
            found.sizes.append(inner)
            found.numbers.append(number)
            return number.stop
    if name:
        many = not _one_of(line, stop)
        counts = (
            inner.unit in JAR_UNITS | {"l"} and inner.number.denominator == 1 and not inner.bare
        )
        if counts and many == (inner.number > 1):
            found.numbers.append(Said(i, inner.number))
            found.sizes.append(inner._replace(number=Fraction(1), said="", bare=True))
        else:
            found.sizes.append(inner)
            if not many:
                found.numbers.append(Said(i, Fraction(1), word=True))
            else:
                found.many = f"{inner.text} {plural(name, 2)}"
        found.vessels.append((name, _typed(line, inner.stop, stop)))
        return _each_after(line, stop, found)
    if inner.unit in JAR_UNITS and not inner.bare and inner.number.denominator == 1:
        size = Measured(inner.stop, Fraction(1), inner.unit, True)
        found.jars.append((Said(i, inner.number), size))
        return inner.stop
    found.behind |= not found.loose and bool(found.vessels)
    found.loose.append(inner)
    in_all = max(line.says(inner.stop, *words) for words in _IN_ALL)
    found.in_all |= bool(in_all)
    return inner.stop + in_all


def _bare_vessel(line: Line, i: int, found: Found) -> int:
    """ "demijohn of cider", "sack": a vessel without a number."""
    name, stop = _vessel_at(line, i)
    if not name:
        return i
    if name in _RISKY and line.word(stop) != "of" and line.at(stop) is not None:
        same = line.tokens[stop].part == line.tokens[i].part
        if same and line.tokens[stop].kind is Kind.WORD:
            return i
    if name in _RISKY and i > 0 and line.tokens[i - 1].part == line.tokens[i].part:
        after = line.at(stop)
        ends = after is None or after.part != line.tokens[i].part or after.text == "of"
        if line.word(i - 1) not in _LIES or not ends:
            return i
    found.vessels.append((name, _typed(line, i, stop)))
    return _each_after(line, stop, found)


def _lone(line: Line, i: int, found: Found) -> int:
    """A number of nothing: "eggs 18", "10 winter squash", "some leeks". "A" and "an" are none."""
    number = read_number(line, i)
    if number is None or number.word or line.word(i - 1) in _FOR:
        return i
    found.numbers.append(number)
    if number.value is not None:
        found.alone.append(number.value)
    return number.stop


def _vessel_at(line: Line, i: int) -> tuple[str, int]:
    """The vessel that begins at `i` and where it stops. Small, big, vacuum and the like may stand
    before it, and so may "freezer" and "takeaway"."""
    start = i
    while line.word(i) in HOW_BIG or line.word(i) in ("glass", "plastic", "empty"):
        i += 1
    for size in (3, 2, 1):
        if not all(line.word(i + n) for n in range(size)):
            continue
        said = " ".join(line.word(i + n) for n in range(size))
        name = vessel(said)
        if name and line.tokens[i].part == line.tokens[i + size - 1].part:
            return name, i + size
    return "", start


def _typed(line: Line, start: int, stop: int) -> str:
    return " ".join(line.tokens[n].said for n in range(start, stop))


def _so_many(line: Line, i: int, number: Said) -> bool:
    """Whether the number behind the "of" at `i` says how many each holds: "a box of 12 eggs". "Jars
    of three bean salad" hold no three of anything."""
    if number.word or number.value is None or number.value.denominator != 1:
        return False
    if line.word(number.stop) == "and":
        return False
    figure = line.tokens[number.stop - 1].kind is Kind.NUMBER
    dozens = line.word(number.stop - 1) in SETS or line.word(number.stop - 1) == "of"
    jar = i > 0 and one(line.tokens[i - 1].text) in ("jar", "bottle", "crock")
    return figure or dozens or not jar


def _vessel_after(line: Line, i: int, found: Found) -> int:
    name, stop = _vessel_at(line, i)
    if name:
        found.vessels.append((name, _typed(line, i, stop)))
        i = stop
    return _each_after(line, i, found)


def _each_after(line: Line, i: int, found: Found) -> int:
    """ "of 500 g", "of 5", "each" behind a vessel."""
    if line.word(i) in _EACH:
        return i + 1
    if line.word(i) in _AT:
        inner = measure_at(line, i + 1)
        if inner is not None and not inner.bare:
            found.sizes.append(inner)
            stop = inner.stop + (line.word(inner.stop) in _EACH)
            return stop + line.says(stop, "of")
        if line.word(i) != "of":
            return i
        number = read_number(line, i + 1)
        if number is not None and _so_many(line, i, number):
            found.sizes.append(Measured(number.stop, number.value or Fraction(1), ""))
            return number.stop
        return i + 1
    inner = measure_at(line, i)
    if inner is not None and not inner.bare and not _vessel_at(line, inner.stop)[0]:
        several = i > 0 and one(line.tokens[i - 1].text) != line.tokens[i - 1].text
        if several and not found.numbers and inner.unit in JAR_UNITS and inner.number > 1:
            return i  # "in jars, 7 quarts": seven of them
        each = line.word(inner.stop) in _EACH
        if each or not inner.is_weight or is_small(inner):
            found.sizes.append(inner)
            return inner.stop + each
    return i
