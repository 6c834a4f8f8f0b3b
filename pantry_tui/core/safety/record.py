"""The record of a process as people type it: every key and value is understood, or refused by name.

What is understood is kept under one name for each thing (`minutes`, `psi`, `canner` ...), in the
words of the person. Words that mean danger (an oven, an open kettle, turned jars) are read in
every value, under whatever key they stand.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.safety.denial import NO, denies
from pantry_tui.core.safety.measured import danger, spelled_out, unsafe_way
from pantry_tui.core.safety.typed import plainly_typed, uncounted
from pantry_tui.core.safety.values import HINTS, READERS, YES, adds_acid, beyond, is_unknown
from pantry_tui.core.words import Method

#: Every key, with what else it is called.
KEYS: dict[str, tuple[str, ...]] = {
    "minutes": ("minute", "mins", "min", "time", "processing time", "process time"),
    "psi": ("pressure", "lbs", "pounds", "gauge pressure"),
    "canner": ("gauge", "pot", "appliance", "equipment"),
    "process": ("processed", "way", "how", "method", "technique"),
    "pack": ("packed", "packing"),
    "prepared": ("preparation", "cut up"),
    "jar": ("jars", "jar size", "size"),
    "form": ("cut", "style", "as"),
    "acid": ("acidified", "acidity added", "lemon", "lemon juice", "citric", "citric acid", "lime"),
    "vinegar": ("vinegars",),
    "altitude": ("elevation", "height", "above sea"),
    "seal": ("sealed", "seals", "sealing", "lid", "lids"),
    "headspace": ("head space", "head"),
    "by": ("from", "maker", "made by", "canned by", "gift", "gift from", "source"),
    "salt": ("salted", "brine"),
    "sugar": ("syrup", "sweetened"),
    "ph": (),
    "vacuum": ("vacuum packed", "vacuum sealed", "vac"),
    "blanched": ("blanch", "blanching", "steamed"),
    "temperature": ("temp", "at", "heat"),
    "cure": ("nitrite", "curing salt"),
    "amount": ("weight", "volume", "contents"),
    "state": (),
    "printed": ("use by", "best before", "bb", "expires", "expiry", "expiration", "sell by"),
    "dated": (),
    "sold": (),
}
_CANONICAL = {name: key for key, others in KEYS.items() for name in (key, *others)}
#: The names of a date after which a pack is not safe; every other one speaks of quality, or of
#: the day on which a shop must have sold it.
USE_BY = ("use by", "expires", "expiry", "expiration")
#: What a canning record can be checked by.
DETAILS = ("minutes", "psi", "canner", "process", "pack", "acid", "vinegar")


#: Where "none" says that it was not processed.
WAYS = ("process", "canner", "minutes")
#: Free words: a person's name, a day, an amount.
TEXTS = frozenset({"by", "amount", "printed"})


@dataclass(frozen=True, slots=True)
class Details:
    """What was typed of a process: `pairs` as they are kept, `problems` what is to be mended,
    each a sentence."""

    pairs: tuple[tuple[str, str], ...]
    problems: tuple[str, ...] = ()


def key_named(text: str) -> str | None:
    """("mins") -> "minutes"; None for a key that is not known."""
    plain = " ".join(re.split(r"[\s_-]+", text.casefold().strip()))
    return _CANONICAL.get(plain)


def read_details(typed: Iterable[tuple[str, str]]) -> Details:
    """Every pair understood, or named with what may be written instead."""
    found: dict[str, str] = {}
    named: dict[str, str] = {}
    problems: list[str] = []
    for name, value in typed:
        key = key_named(name)
        if key is None:
            problems.append(_no_key(name))
            continue
        typed_value = " ".join((value if key == "by" else plainly_typed(value)).split())
        said = _named_by_its_key(key, name, typed_value)
        wrong = None if is_unknown(said) else _wrong(key, said)
        if wrong is not None:
            problems.append(f"{name}={typed_value[:40]} is not understood: {wrong}.")
        elif key in found and found[key].casefold() != said.casefold():
            two = (named[key], found[key]), (name, said)
            kept = _of_two_acids(*two) if key == "acid" else None
            if kept is not None:
                named[key], found[key] = kept
            else:
                problems.append(
                    f"{key} is said twice, {found[key][:30]} and {said[:30]}: leave one out."
                )
        else:
            found[key], named[key] = said, name
    return Details(tuple(found.items()), tuple(problems))


def _no_key(name: str) -> str:
    from difflib import get_close_matches  # only for a key that nobody knows

    plain = " ".join(re.split(r"[\s_-]+", name.casefold().strip()))
    if plain == "sell by":
        return (
            "A sell-by date is the shop's own: leave it out, or write printed= for a use-by date."
        )
    near = get_close_matches(plain, _CANONICAL)
    keys = dict.fromkeys(_CANONICAL[one] for one in near)
    hint = f"near it: {', '.join(keys)}" if keys else f"known: {', '.join(DETAILS)}, jar, altitude"
    return f"{name[:30]!r} is no detail that is known here ({hint}): use one, or note=..."


def _named_by_its_key(key: str, name: str, value: str) -> str:
    """What the other name of a key adds to its value: lemon=2 tbsp, gift=yes, gift=no."""
    plain = name.casefold().strip()
    named = key == "acid" and plain not in ("acid", "acidified", "acidity added")
    if named and not denies(value) and adds_acid(value):
        word = "citric acid" if plain.startswith("citric") else plain.removesuffix(" juice")
        known = word.split()[0] in value.casefold()
        return value if known else f"{word} {value}".removesuffix(" yes")
    if key == "printed" and plain.replace("-", " ") in USE_BY:
        return f"use by {value}"
    if key == "salt" and plain == "brine" and re.search(r"\d", spelled_out(value)):
        return value if "brine" in value.casefold() else f"{value} brine"
    if re.match(r"cut\b", plain) and value.casefold() in YES | NO:
        return "cut" if value.casefold() in YES else "whole"
    if key == "by" and value.casefold() in YES:
        return "somebody else"
    if key == "by" and plain.startswith("gift") and value.casefold() in NO:
        return "us"
    return value


_Said = tuple[str, str]


def _of_two_acids(first: _Said, second: _Said) -> _Said | None:
    """Which counts of two acids, each the name it was typed under and what was said; None where
    they are one acid, and differ, or there was one and none at all. No lemon and a spoon of citric
    acid are that spoon."""
    if is_unknown(first[1]) or is_unknown(second[1]):
        return second if is_unknown(first[1]) else first
    kinds = _acid_kind(*first), _acid_kind(*second)
    none = denies(first[1]), denies(second[1])
    if all(none):
        return first
    if any(none):
        one = kinds[0] == kinds[1] or not kinds[none.index(True)]
        return None if one else first if none[1] else second
    if first[1].casefold() in YES:
        return second
    return None if kinds[0] == kinds[1] and second[1].casefold() not in YES else first


def _acid_kind(name: str, value: str) -> str:
    """ "" of any acid."""
    both = f"{name} {value}".casefold()
    return next((one for one in ("lemon", "lime", "citric") if one in both), "")


# -- values: what is wrong with one, or None ------------------------------------------------------


def _wrong(key: str, value: str) -> str | None:
    said = unsafe_way(value) if key in WAYS else danger(value)
    if said is not None:
        return None  # understood, and but for a free word the reason for a doubt
    # "lemon?", "tight?": nobody says that it was so; "<5%", "ph>4.6": nor how much it was.
    asked = re.search(r"[?<>]", value) is not None and key not in TEXTS
    uncertain = asked or (key not in TEXTS and uncounted(key, value))
    return HINTS[key] if uncertain or beyond(key, value) or not READERS[key](value) else None


#: What a check of each method needs to know beside the jar.
NEEDED = {Method.BOILING_WATER: ("minutes",), Method.PRESSURE: ("minutes", "psi")}
NOT_CHECKED = "No process recorded: not checked."
IN_PART = "Process recorded only in part"
NO_ALTITUDE = "Altitude not said: process checked for 1,000 ft only."


@lru_cache(maxsize=1024)
def known(pairs: tuple[tuple[str, str], ...]) -> frozenset[str]:
    """The keys of which a record says something."""
    details = read_details(pairs).pairs
    return frozenset(key for key, value in details if not is_unknown(value))


def not_checked(method: Method, pairs: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    """What is said beside the verdict of a canned batch whose process could not be checked, or
    only in part; "altitude" stands in the record as unknown where nobody had said it."""
    said = known(pairs)
    needed = NEEDED.get(method, ())
    if needed and not said & set(DETAILS):
        return (NOT_CHECKED,)
    found = []
    missing = [key for key in needed if key not in said]
    if missing:
        found.append(f"{IN_PART}: {' and '.join(missing)} not checked.")
    if ("altitude", "unknown") in pairs:
        found.append(NO_ALTITUDE)
    return tuple(found)


def of_no_process(said: str) -> bool:
    """Whether it is that no process is recorded, or not all of it."""
    return said.startswith((NOT_CHECKED, IN_PART))
