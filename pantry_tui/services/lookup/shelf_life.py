"""What publications say of a method and a food, both kinds of limit, with sources."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from pantry_tui.core.canned import low_acid_in_water
from pantry_tui.core.dataclass import replace
from pantry_tui.core.dates import span
from pantry_tui.core.keeping import wording
from pantry_tui.core.keeping.cases import sayings
from pantry_tui.core.keeping.exposure import imagined
from pantry_tui.core.keeping.harm import kept_as
from pantry_tui.core.keeping.limits import as_packed, judge_fresh
from pantry_tui.core.keeping.no_day import DOUBT
from pantry_tui.core.keeping.rules import Rule, Status, closeness, guessed, held_at, speaking
from pantry_tui.core.keeping.shop import Shop
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.prepared import PREPARED
from pantry_tui.core.safety.process import doubt
from pantry_tui.core.words import ASSUMED_F, Climate, Kind, Method, State, Verdict
from pantry_tui.errors import BadInput
from pantry_tui.reference.names import method_named
from pantry_tui.reference.process import load_not_recommended, processes_named
from pantry_tui.reference.tables import Tables
from pantry_tui.services.batchwork.prepared import prepared
from pantry_tui.services.lookup import too_warm

SHOP_FOOD_ALONE = "No published figure but one for shop food, of quality alone."


def _food(tables: Tables, text: str) -> FoodFacts:
    facts = tables.facts(text)
    if facts is None:
        near = ", ".join(tables.index.near(text)) or "nothing near it"
        raise BadInput(f"{text[:60]!r} is not in the food table; near it: {near}.")
    return facts


def _as_prepared(tables: Tables, how: Method, typed: str) -> tuple[Method, FoodFacts, str]:
    """The food, whose figures speak for it, and what was done to it: a crop that was cut is no
    whole one any more. Raises BadInput for words that make another thing of it."""
    what = _food(tables, typed)
    if tables.index.named(typed) is not None:
        return how, what, ""
    done, odd = prepared(typed, what, how)
    if odd:
        raise BadInput(f"Not understood: {odd[0]!r}; ask for {what.name} without it.")
    if not done:
        return how, what, ""
    bare = Batch("", "", what, how, None, process=((PREPARED, done),))
    return kept_as(bare), as_packed(bare, opened=False).food, done


def _climates(tables: Tables, method: Method, food: FoodFacts, state: State) -> list[Climate]:
    """The climates that have a rule of their own, warmest first."""
    rules = tables.book.of(method)
    return [
        climate
        for climate in Climate
        if any(climate in r.climates for r in speaking(rules, food, method, state, climate))
    ]


def _word(kind: Any, text: str | None, what: str) -> Any:
    try:
        return kind(text.strip().lower()) if text else None
    except ValueError:
        raise BadInput(f"{text!r} is no {what}: one of {', '.join(kind)}.") from None


def keeps(
    tables: Tables,
    method: str,
    food: str,
    *,
    climate: str | None = None,
    temp_f: float | None = None,
    state: str | None = None,
    made: date | None = None,
    strictest: bool = False,
) -> dict[str, Any]:
    """The published limits as the command contract's JSON. `made` is day 0 of the state; `in_use`
    is the figure of each kind that gives a day, within or below the published range.

    Without a climate: a freezer for what is frozen, else the warmest with a rule that allows it.
    Temperatures in °F. `strictest`: the limits of any country, not the usual advice alone. What
    has no tested process is not allowed. Raises BadInput for an unknown method, food, climate or
    state.
    """
    how, what, done = _as_prepared(tables, method_named(method), food)
    book = replace(tables.book, strict=True) if strictest else tables.book
    against, untested = _process_against(how, what, done)
    standing: State = _word(State, state, "state") or State.SEALED
    place: Climate | None = _word(Climate, climate, "climate")
    kept = Shop(Batch("", "", what, how, None), book).method
    if place is None:
        place = _best_climate(tables, kept, what, standing)
    rules = tables.book.of(kept)
    spoken = speaking(rules, what, kept, standing, place)
    warmth = temp_f if temp_f is not None else _reference(spoken, place)
    spoken = list(held_at(spoken, warmth))
    answer: dict[str, Any] = {
        "method": how.value,
        "food": what.name,
        "place": place.value,
        "state": standing.value,
        "allowed": not against and _allowed(how, what, spoken),
        "best_by": None,
        "discard_after": None,
        "discard_after_why": "",
        "published": {
            kind.value: _range(what, spoken, kind) for kind in (Kind.QUALITY, Kind.SAFETY)
        },
        "in_use": {kind.value: None for kind in (Kind.QUALITY, Kind.SAFETY)},
        "reasons": [],
        "sources": list(dict.fromkeys(tables.cite(rule) for rule in spoken)),
        "cautions": [CAUTION],
    }
    if against:
        return {
            **answer,
            "discard_after_why": wording.PROCESS,
            "published": {kind.value: None for kind in (Kind.QUALITY, Kind.SAFETY)},
            "reasons": against,
        }
    wide = sayings(what, kept, book).of(standing, place, warmth).wide
    if wide is not None:
        answer["published"][Kind.QUALITY.value] = [wide.rule.least, wide.rule.most, wide.rule.unit]
        answer["sources"] = list(dict.fromkeys([*answer["sources"], tables.cite(wide.rule)]))
    since = made or date(2000, 1, 1)
    there = imagined(place, warmth, measured=True)
    judged = judge_fresh(Batch("", "", what, how, since), standing, there, since, book)
    if judged.refused and answer["allowed"]:
        no = speaking(tables.book.of(kept), what, kept, standing, place)
        return _refused(answer, judged.refused, no, tables)
    if (instead := too_warm.instead(answer, place, temp_f, judged)) is not None:
        return instead
    sure = [rule for rule in spoken if not guessed(rule, what)]
    in_doubt = judged.verdict is Verdict.UNKNOWN and not judged.usable and sure != spoken
    if in_doubt:
        # A figure for what it may be only shortens what else is published: here nothing is.
        spoken = sure
        answer["published"][Kind.SAFETY.value] = _range(what, sure, Kind.SAFETY)
        if wide is None:
            answer["published"][Kind.QUALITY.value] = _range(what, sure, Kind.QUALITY)
    elif made is not None and answer["allowed"]:
        answer["best_by"] = judged.best_by.isoformat() if judged.best_by else None
        answer["discard_after"] = judged.discard_after.isoformat() if judged.discard_after else None
    if answer["published"][Kind.SAFETY.value] is None:
        answer["discard_after_why"] = DOUBT if in_doubt else judged.why_no_discard
    answer["in_use"] = {
        kind.value: _in_use(kind, judged.rules, spoken) if answer["published"][kind.value] else None
        for kind in (Kind.QUALITY, Kind.SAFETY)
    }
    said = judged.reasons
    if in_doubt:
        said = tuple(x for x in said if not x.startswith((wording.BEST, wording.DISCARD)))
    answer["reasons"] = _reasons(judged.verdict, said, spoken, made)
    if wide is not None and not spoken:
        answer["reasons"] = [SHOP_FOOD_ALONE]
    elif wide is not None and not made:
        answer["reasons"].insert(0, _figure(wide.rule))
    answer["reasons"] += untested + views(tables, how, what, standing, place)
    return answer


def _refused(
    answer: dict[str, Any], why: str, spoken: list[Rule], tables: Tables
) -> dict[str, Any]:
    """Bought food has no rows of its own, but what its kind may never do it may not do either."""
    said = [tables.cite(rule) for rule in spoken if rule.wording == why]
    return {**answer, "allowed": False, "reasons": [why], "sources": list(dict.fromkeys(said))}


def _process_against(how: Method, what: FoodFacts, done: str) -> tuple[list[str], list[str]]:
    """What forbids canning it so, and what is only said: under pressure no figure stands without a
    tested process; in boiling water published figures for acid food do."""
    rows, advice = processes_named(what.name), load_not_recommended()
    record = {PREPARED: done} if done else {}
    found = doubt(how, what, "", record, None, rows, advice)
    if found is None:
        return [], []
    said = list(found.problems)
    acid_alone = how is not Method.PRESSURE and all("No tested process" in one for one in said)
    return ([], said) if acid_alone else (said, [])


def _reference(spoken: list[Rule], place: Climate) -> float:
    """The temperature at which the closest figure was published, for a place that is not known."""
    figures = (rule.temp_f_max for rule in spoken if rule.kind is Kind.QUALITY and rule.use)
    published = next((temp for temp in figures if temp is not None), None)
    return ASSUMED_F[place] if published is None else published


def _best_climate(tables: Tables, how: Method, what: FoodFacts, standing: State) -> Climate:
    if how is Method.FROZEN and standing is State.SEALED:
        return Climate.FREEZER
    rules = tables.book.of(how)
    for climate in _climates(tables, how, what, standing):
        found = speaking(rules, what, how, standing, climate)
        if _allowed(how, what, found):
            return climate
    return Climate.PANTRY


def _allowed(how: Method, what: FoodFacts, spoken: list[Rule]) -> bool:
    if low_acid_in_water(how, what):
        return False
    return not any(rule.kind is Kind.REFUSE for rule in spoken)


def _range(what: FoodFacts, spoken: list[Rule], kind: Kind) -> list[Any] | None:
    """[least, most, unit] of the row in use; None where nothing is published with a number."""
    fits = [rule for rule in spoken if rule.kind is kind and rule.use is not None]
    if not fits:
        return None
    nearest = closeness(fits[0], what)
    fits = [rule for rule in fits if closeness(rule, what) == nearest]
    rule = min(fits, key=lambda one: one.days)
    return [rule.least, rule.most, rule.unit]


def _in_use(kind: Kind, judged: Sequence[object], spoken: list[Rule]) -> list[Any] | None:
    """[number, unit] of the figure that gives the day: of several the judge's own, else the least;
    the range that is published stands beside it."""
    for rules in (judged, spoken):
        fits = [
            one
            for one in rules
            if isinstance(one, Rule) and one.kind is kind and one.use is not None
        ]
        if fits:
            found = min(fits, key=lambda one: one.days)
            return [found.use, found.unit]
    return None


def _reasons(
    verdict: Verdict, said: tuple[str, ...], spoken: list[Rule], made: date | None
) -> list[str]:
    if verdict is Verdict.DO_NOT_TASTE:
        return list(said)
    if not spoken:
        return ["No published figure."]
    lines = list(said) if made else [_figure(rule) for rule in spoken]
    if not any(rule.use is not None or rule.kind is Kind.REFUSE for rule in spoken):
        lines.insert(0, "No published figure with a number.")
    return list(dict.fromkeys(lines))


def _figure(rule: Rule) -> str:
    if rule.use is None:
        return rule.wording
    return f"{rule.kind.value}: {span(rule.use, rule.unit)}. {rule.wording}"


def shop_food(
    tables: Tables, how: Method, what: FoodFacts, standing: State, place: Climate
) -> list[Rule]:
    """What the federal storage table of 2018 says of it, those with a figure first, then the
    shortest."""
    method = Shop(Batch("", "", what, how, None), tables.book).method
    found = [
        rule
        for rule in tables.book.wide(what.name)
        if rule.method is method and rule.state is standing and place in rule.climates
    ]
    return sorted(found, key=lambda rule: rule.days)


def views(
    tables: Tables, how: Method, what: FoodFacts, standing: State, place: Climate
) -> list[str]:
    """Rows that give no date but should be seen: stricter views, common practice, refused ones."""
    words = {
        Status.STRICTER: "Stricter view",
        Status.LENIENT: "Longer published range, not used",
        Status.SUPERSEDED: "Superseded, not used",
        Status.OUTLIER: "Outlier, not used",
        Status.COMMON: "Common practice, no source",
    }
    found = []
    for rule in tables.book.of(how):
        fits = closeness(rule, what) >= 0 and rule.state is standing and place in rule.climates
        if rule.status in words and fits:
            source = "" if rule.status is Status.COMMON else f" ({tables.cite(rule)})"
            found.append(f"{words[rule.status]}: {_figure(rule)}{source}")
    wide = shop_food(tables, how, what, standing, place)
    found += dict.fromkeys(f"Quality: {one.wording} ({tables.cite(one)})" for one in wide)
    return found
