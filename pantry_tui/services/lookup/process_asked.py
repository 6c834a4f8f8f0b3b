"""The jar, pack and canner that are typed, as the tables of processes know them."""

from __future__ import annotations

import re

from pantry_tui.core.safety.jars import BIGGER, JARS, read_jar
from pantry_tui.core.safety.measured import CANNERS, read_canner
from pantry_tui.core.safety.metric_jars import MAKER, by_maker, in_millilitres
from pantry_tui.core.safety.process import PACKS
from pantry_tui.errors import BadInput

#: A jar by its ounces or pints; metric ones are read elsewhere.
_OUNCES = re.compile(r"[\d\s./½-]*(?:oz|ounce|pint|pt|quart|qt|gallon|gal)")
#: Smaller jars take the time of the next larger size, 12-oz and half-pint jars that of a pint.
_SMALLER_JAR = (
    "National Center for Home Food Preservation, Jar Size Choices; Michigan State University "
    "Extension; K-State Research and Extension, odd-sized jars, 2022 (read)"
)


def read_jar_of(text: str, by: str, low_acid: bool) -> str:
    """The published jar that a typed one is held to: itself, or by its ounces the next larger; a
    metric one by a maker's manual where the household goes by it."""
    if in_millilitres(text) is not None:
        metric = by_maker(text, low_acid=low_acid) if by == MAKER else read_jar(text)
        return metric or BIGGER
    plain = text.casefold().replace("jars", "").replace("jar", "").strip().removesuffix("s")
    word = "-".join(plain.split())
    if word in JARS:
        return word
    if _OUNCES.fullmatch(plain):
        jar = read_jar(plain)
        if jar in JARS:
            return str(jar)
        raise BadInput(
            f"{text[:40]!r} is larger than any jar with a process: a half-gallon at most."
        )
    raise BadInput(f"{text[:40]!r} is no jar of the tables: one of {', '.join(JARS)}, or 12 oz.")


def held_to(text: str, jar: str, used: str) -> list[str]:
    """Why a jar takes the time of a larger one, nothing where it has its own."""
    if in_millilitres(text) is not None:
        return []  # a metric jar has its own word
    plain = " ".join(text.casefold().replace("-", " ").split())
    own = {jar.replace("-", " "), f"{JARS[jar]} oz", f"{jar.replace('-', ' ')}s"}
    if jar == used and plain.removesuffix(" jars").removesuffix(" jar") in own:
        return []
    return [
        f"A {text.strip()} takes the full time of a {used}, the next larger jar with a process "
        f"({_SMALLER_JAR})."
    ]


def read_pack(text: str | None) -> str | None:
    if not text:
        return None
    word = text.casefold().replace("pack", "").strip(" -")
    if word not in PACKS:
        raise BadInput(f"{text[:40]!r} is no pack: hot or raw.")
    return word


def canner_named(text: str) -> str:
    canner = read_canner(text)
    if canner not in CANNERS:
        raise BadInput(f"{text[:40]!r} is no canner of the tables: one of {', '.join(CANNERS)}.")
    return canner
