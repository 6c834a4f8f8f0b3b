"""The published canning process for a food, or a refusal: looked up, never computed."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from pantry_tui.core.batchwork.steam import boiling_point_f, canner_f
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.jars import JARS
from pantry_tui.core.safety.measured import unsafe_way
from pantry_tui.core.safety.metric_jars import (
    LITRE,
    STRICT,
    is_litre,
)
from pantry_tui.core.safety.process import (
    PACKS,
    NotRecommended,
    ProcessRow,
    lookup,
)
from pantry_tui.core.safety.process_names import ends_alike, name_key
from pantry_tui.core.safety.ways import LOWEST_BAND_FT
from pantry_tui.core.text import begun
from pantry_tui.core.words import Trust
from pantry_tui.errors import BadInput
from pantry_tui.reference.names import JOINING
from pantry_tui.reference.process import load_not_recommended, processes_named
from pantry_tui.reference.tables import Tables
from pantry_tui.services.lookup.process_asked import (
    canner_named,
    held_to,
    read_jar_of,
    read_pack,
)


@dataclass(frozen=True, slots=True)
class _Asked:
    """What was asked for, in the tables' words. `name` finds the rows in `published`."""

    name: str
    facts: FoodFacts | None
    published: tuple[ProcessRow, ...]
    advice: NotRecommended | None

    @property
    def low_acid(self) -> bool:
        """By the food table; a published mix without acid is low-acid too."""
        if self.facts is not None and not self.facts.is_acid:
            return True
        rows = self.published
        return bool(rows) and all(r.psi is not None and r.acidify == "none" for r in rows)


def process(
    tables: Tables,
    food: str,
    jar: str,
    canner: str,
    pack: str | None = None,
    altitude_ft: int | None = 0,
    jars: str = STRICT,
) -> dict[str, Any]:
    """The command contract's JSON: answer "process", "refused" or "not published".

    Minutes, psi, acid and headspace are filled where all options agree on them (time and
    pressure together), else they stand in the options only, each a pair of its own. Altitude in
    feet, None where nobody said: the lowest band, and it says so. Figures from memory are told as
    a reason and never given as the answer. Raises BadInput for an unknown food, jar, canner or
    pack.
    """
    asked = _find(tables, food)
    feet = LOWEST_BAND_FT if altitude_ft is None else altitude_ft
    size, packed = read_jar_of(jar, jars, asked.low_acid), read_pack(pack)
    against = _against_way(tables, canner)
    if against is not None:
        return against
    way = canner_named(canner)
    if asked.advice is not None:
        return _refused(tables, asked.advice)
    if way == "boiling-water" and asked.low_acid:
        return _low_acid(tables, asked)
    used = _next_larger(asked.published, size, way)
    rows = lookup(asked.published, asked.name, used, way, feet, packed)
    firm = [row for row in rows if row.trust is not Trust.MEMORY]
    recalled = [row for row in rows if row.trust is Trust.MEMORY]
    if not firm:
        why = _recalled(tables, recalled) or _missing(asked, used, way, packed, feet)
        return _answer("not published", reasons=[*why, *_instead(asked, used, way, feet)])
    found = _published(tables, firm, recalled)
    found["reasons"] += held_to(jar, size, used)
    found["physics"] = _physics(firm, feet)
    if asked.low_acid and is_litre(jar):
        found["reasons"].insert(0, LITRE)
    if altitude_ft is None:
        found["reasons"].insert(0, "Altitude not said: this is the process for 1,000 ft only.")
    return found


def _next_larger(rows: Sequence[ProcessRow], jar: str, canner: str) -> str:
    """The jar whose rows speak: its own, else the smallest larger one that is published."""
    if jar not in JARS:
        return jar
    published = {row.jar for row in rows if row.canner == canner}
    order = list(JARS)
    larger = [one for one in order[order.index(jar) :] if one in published]
    return larger[0] if larger else jar


def _instead(asked: _Asked, jar: str, canner: str, feet: int) -> list[str]:
    """What is published for it at this altitude in another jar or another canner."""
    firm = [row for row in asked.published if row.trust is not Trust.MEMORY and row.at(feet)]
    jars = {row.jar for row in firm if row.canner == canner and row.jar != jar}
    smaller = [one for one in JARS if one in jars]
    if smaller:
        return [f"Instead: {' or '.join(smaller)} jars in the same canner."]
    others = list(dict.fromkeys(row.canner for row in firm if row.canner != canner))
    if others:
        return [f"Instead: {' or '.join(others)}, which is published for {feet:,} ft."]
    return ["Instead: freeze it, dry it or keep it in the refrigerator."]


def _physics(rows: Sequence[ProcessRow], feet: int) -> list[str]:
    """What the steam is at that altitude: shown beside the published row, never instead of it."""
    gauges = dict.fromkeys(row.psi for row in rows if row.psi is not None)
    return [
        f"Physics, not a process: water boils at {boiling_point_f(feet):.0f} °F there.",
        *(
            f"Physics, not a process: {psi} psi on the gauge is steam of "
            f"{canner_f(psi, feet):.0f} °F there."
            for psi in gauges
        ),
    ]


def _answer(answer: str, **filled: Any) -> dict[str, Any]:
    unknown = dict.fromkeys(("minutes", "psi", "acidify", "headspace_in"))
    lists: dict[str, Any] = {"options": [], "reasons": [], "physics": [], "sources": []}
    return {"answer": answer, **unknown, **lists, **filled, "cautions": [CAUTION]}


def _cite(tables: Tables, row: ProcessRow | NotRecommended) -> str:
    return f"{tables.sources[row.source]} ({row.trust.shown})"


# -- what was asked ------------------------------------------------------------------------------


def _find(tables: Tables, text: str) -> _Asked:
    """A published name or one of its other names first, then the food table's names. What words
    beside a name make of it (leek soup) has no process of another food."""
    advice = load_not_recommended()
    named = _named(tables, text)
    facts = named or (tables.composed(text) if not _joined(text) else None)
    for name in (text, named.name if named else ""):
        key = name_key(name)
        warned = next((one for one in advice if key and key in one.names), None)
        published = tuple(row for row in processes_named(name) if ends_alike(name, row.names))
        if warned is not None or published:
            return _Asked(name, facts, published, warned)
    if facts is not None:
        return _Asked(facts.name, facts, (), None)
    near = ", ".join(tables.index.near(text)) or "nothing near it"
    raise BadInput(f"{text[:40]!r} is not in the food or canning tables; near it: {near}.")


def _joined(text: str) -> bool:
    """Whether it says what the food is packed in or put up with, which changes the process."""
    return not JOINING.isdisjoint(text.casefold().split())


def _named(tables: Tables, text: str) -> FoodFacts | None:
    """By the food table. "In" may change the food (halved tomatoes in juice are no tomato
    juice), so such a name must stand there as a whole."""
    found = tables.named(text)
    food = None if found is None else tables.index.find(text)
    if food is not None and "in" in text.casefold().split():
        whole = name_key(text) in map(name_key, (food.name, *food.aliases))
        return found if whole else None
    return found


# -- refusals ------------------------------------------------------------------------------------


def _way(prefix: str, key: tuple[str, ...]) -> NotRecommended | None:
    rows = (one for one in load_not_recommended() if one.food.startswith(prefix))
    return next((one for one in rows if key in one.names), None)


def _against_way(tables: Tables, canner: str) -> dict[str, Any] | None:
    """A refusal of the way itself (open kettle, oven ...), whatever the food."""
    listed = _way("Method:", name_key(canner))
    if listed is not None:
        return _refused(tables, listed)
    said = unsafe_way(canner)
    instead = "Instead: a boiling-water or pressure canner with a tested process."
    return None if said is None else _answer("refused", reasons=[said, instead])


def _refused(tables: Tables, row: NotRecommended) -> dict[str, Any]:
    instead = row.alternative[:1].lower() + row.alternative[1:]
    reasons = [f"{row.food}. {row.reason}.", f"Instead: {instead}."]
    return _answer("refused", reasons=reasons, sources=[_cite(tables, row)])


def _low_acid(tables: Tables, asked: _Asked) -> dict[str, Any]:
    row = _way("Method:", name_key("Method: low-acid food in boiling water"))
    reasons = [
        f"{begun(asked.name)}: low-acid food may not be canned in boiling water, since the "
        "spores of botulism live through it.",
        "Instead: a pressure canner with a tested process, or freeze it."
        if any(row.canner in ("dial", "weighted") for row in asked.published)
        else "Instead: freeze it; no tested process is known for it in a pressure canner either.",
    ]
    return _answer("refused", reasons=reasons, sources=[_cite(tables, row)] if row else [])


# -- answers -------------------------------------------------------------------------------------


def _published(
    tables: Tables, rows: Sequence[ProcessRow], recalled: Sequence[ProcessRow]
) -> dict[str, Any]:
    options = _options(tables, rows)
    pair = len({(one["minutes"], one["psi"]) for one in options}) == 1
    filled = {
        key: options[0][key] if len({one[key] for one in options}) == 1 else None
        for key in ("acidify", "headspace_in")
    }
    reasons = [_band(rows[0])]
    if len(options) > 1 and not pair:
        reasons.append(
            "Several processes: the time of one never goes with the pressure of another."
            if rows[0].psi
            else "Several processes: take the one for the form that is packed."
        )
    reasons += [f"{row.food}: {row.note}." for row in rows if row.note]
    return _answer(
        "process",
        minutes=options[0]["minutes"] if pair else None,
        psi=options[0]["psi"] if pair else None,
        **filled,
        options=options,
        reasons=list(dict.fromkeys(reasons)) + _recalled(tables, recalled),
        sources=list(dict.fromkeys(_cite(tables, row) for row in rows)),
    )


def _options(tables: Tables, rows: Sequence[ProcessRow]) -> list[dict[str, Any]]:
    """One option for every process; packs with the same figures stand together."""
    groups: dict[tuple[Any, ...], list[ProcessRow]] = {}
    for row in rows:
        figures = (row.minutes, row.psi, row.acidify, row.headspace_in, row.source, row.trust)
        groups.setdefault((row.food, row.option, *figures), []).append(row)
    return [
        {
            "food": alike[0].food,
            "option": alike[0].option or None,
            "pack": _packs(alike),
            "jar": alike[0].jar,
            "minutes": alike[0].minutes,
            "psi": alike[0].psi,
            "acidify": alike[0].adds_acid,
            "headspace_in": alike[0].headspace_in,
            "source": _cite(tables, alike[0]),
        }
        for alike in groups.values()
    ]


def _packs(rows: Sequence[ProcessRow]) -> str:
    return " or ".join(pack for pack in PACKS if pack in {row.pack for row in rows})


def _band(row: ProcessRow) -> str:
    if row.high_ft is None:
        return f"For {row.low_ft:,} ft and above."
    return f"For {row.low_ft:,} to {row.high_ft:,} ft."


def _recalled(tables: Tables, rows: Iterable[ProcessRow]) -> list[str]:
    """A safety figure from memory is no answer: it is told, with where to look it up."""
    groups: dict[tuple[Any, ...], list[ProcessRow]] = {}
    for row in rows:
        groups.setdefault((row.food, row.minutes, row.psi, row.source), []).append(row)
    found = []
    for (food, minutes, psi, source), alike in groups.items():
        time = f"{minutes} minutes" if psi is None else f"{minutes} minutes at {psi} psi"
        found.append(
            f"Recalled and not read, so no answer: {food}, {_packs(alike)} pack, {time}. "
            f"Look it up: {tables.sources[source]}."
        )
    return found


def _missing(asked: _Asked, jar: str, canner: str, pack: str | None, altitude_ft: int) -> list[str]:
    """Which part of what was asked has no published row."""
    rows = [row for row in asked.published if row.canner == canner]
    if not rows:
        other = list(dict.fromkeys(row.canner for row in asked.published))
        only = f", only for {' and '.join(other)}" if other else ""
        return [f"No tested process for {asked.name} ({canner}) is in the tables{only}."]
    if not any(row.jar == jar for row in rows):
        jars = [one for one in JARS if one in {row.jar for row in rows}]
        return [f"No process for a {jar} of {asked.name}: published for {', '.join(jars)}."]
    rows = [row for row in rows if row.jar == jar]
    if pack is not None and not any(row.pack == pack for row in rows):
        return [f"No process for {asked.name} packed {pack}: only {rows[0].pack}."]
    return [f"No process is published for {altitude_ft:,} ft: the {canner} tables stop below."]
