"""The laws of a power cut over random cuts and items, and the bad cells of its table."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.outage import STRICTNESS, Action, Cut, Triage, hold_hours, triage
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.outage import load_outage, read_outage
from pantry_tui.reference.tables import load_tables

FRIDGE, FREEZER = Climate.FRIDGE, Climate.FREEZER
KNOWN = [FoodFacts(f.name, f.group, f.acidity, f.classes) for f in load_tables().foods]
STRANGE = [
    FoodFacts(name, group, acidity, known=False)
    for name in ("something", "ice cream", "mayonnaise")
    for group in Group
    for acidity in (Acidity.ACID, Acidity.LOW_ACID)
]
HERE = [State.SEALED, State.OPEN, State.THAWED, State.WORKING]
TEMPS = [-5.0, 0.0, 1.0, 28.0, 29.0, 32.0, 40.0, 41.0, 50.0, 51.0, 90.0, 91.0, 120.0]
HOURS = [0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 4.5, 5.9, 6.0, 8.0, 8.5, 24.0, 24.5, 27.0]

foods = st.sampled_from(KNOWN) | st.sampled_from(STRANGE)
hours = st.sampled_from([*HOURS, 48.0, 48.5, 49.0, 72.0, 72.5, 200.0]) | st.floats(0, 300)
temps = st.none() | st.sampled_from(TEMPS) | st.floats(-20, 130)
cuts = st.builds(
    Cut, st.sampled_from([FRIDGE, FREEZER]), hours, st.booleans(), temps,
    st.sampled_from([None, True, False]), st.booleans(),
)  # fmt: skip
items = st.tuples(foods, st.sampled_from(list(Method)), st.sampled_from(HERE))
Item = tuple[FoodFacts, Method, State]


def judged(item: Item, cut: Cut) -> Triage:
    return triage(*item, cut, load_outage())


def strictness(item: Item, cut: Cut) -> int:
    return STRICTNESS.index(Action(judged(item, cut).action))


@given(item=items, cut=cuts, more=hours)
def test_a_longer_cut_is_never_milder(item: Item, cut: Cut, more: float) -> None:
    longer = replace(cut, hours=cut.hours + more)
    assert strictness(item, longer) >= strictness(item, cut)


@given(item=items, cut=cuts, other=st.sampled_from(TEMPS) | st.floats(-20, 130))
def test_a_warmer_reading_is_never_milder(item: Item, cut: Cut, other: float) -> None:
    if cut.max_temp_f is None:
        cut = replace(cut, max_temp_f=-20.0)
    assert cut.max_temp_f is not None
    low, high = sorted((cut.max_temp_f, other))
    cool, warm = replace(cut, max_temp_f=low), replace(cut, max_temp_f=high)
    assert strictness(item, warm) >= strictness(item, cool)


@given(item=items, cut=cuts)
def test_less_full_is_never_milder(item: Item, cut: Cut) -> None:
    full, half = replace(cut, full=True), replace(cut, full=False)
    assert strictness(item, half) >= strictness(item, full)


@given(item=items, cut=cuts)
def test_less_ice_is_never_milder(item: Item, cut: Cut) -> None:
    found = [strictness(item, replace(cut, ice=ice)) for ice in (True, None, False)]
    assert found == sorted(found)


@given(item=items, cut=cuts)
def test_an_opened_door_is_never_milder(item: Item, cut: Cut) -> None:
    shut, opened = replace(cut, opened=False), replace(cut, opened=True)
    assert strictness(item, opened) >= strictness(item, shut)


def _promised(cut: Cut) -> bool:
    """Within the published hours the door, kept shut, says how cold it was."""
    return not cut.opened and cut.hours <= hold_hours(cut.appliance, cut.full)


@given(item=items, cut=cuts, read=st.sampled_from(TEMPS) | st.floats(-20, 130))
def test_an_unread_temperature_is_no_milder_than_any_it_could_be(
    item: Item, cut: Cut, read: float
) -> None:
    unread = replace(cut, max_temp_f=None)
    if _promised(unread):
        read = min(read, 40.0 if cut.appliance is FRIDGE else 28.0)
    assert strictness(item, unread) >= strictness(item, replace(cut, max_temp_f=read))


@given(item=items, cut=cuts, ice=st.booleans())
def test_food_nobody_looked_at_is_no_milder_than_what_could_be_seen(
    item: Item, cut: Cut, ice: bool
) -> None:
    unseen = replace(cut, ice=None)
    cold = cut.max_temp_f is None or cut.max_temp_f <= 40
    kept_frozen = cut.max_temp_f is not None and cut.max_temp_f <= 0
    # In the first hour, the shortest time published for warm food, no cut thaws a freezer.
    promised = cold and (_promised(cut) or cut.hours <= 1)
    seen = replace(cut, ice=ice or kept_frozen or promised)
    assert strictness(item, unseen) >= strictness(item, seen)


@given(item=items, cut=cuts)
def test_under_oil_all_goes_once_the_cold_is_gone(item: Item, cut: Cut) -> None:
    food, _, state = item
    found = judged((food, Method.IN_OIL, state), cut)
    # Raw meat shows when the cold was gone: it is the first that must go.
    meat = FoodFacts("ground beef", Group.MEAT, Acidity.LOW_ACID, frozenset({"ground-meat"}))
    if judged((meat, Method.FROZEN, State.SEALED), cut).action == "discard":
        assert found.verdict is Verdict.DISCARD
    assert found.action != "refreeze"


@given(cut=cuts, state=st.sampled_from(HERE))
def test_raw_animal_food_is_kept_only_where_it_stayed_cold(cut: Cut, state: State) -> None:
    animals = {Group.MEAT, Group.FISH, Group.EGG}
    by_group = [food for food in KNOWN if food.group in animals]
    actions = {judged((food, Method.FRESH, state), cut).action for food in by_group}
    assert len(actions) == 1
    if cut.max_temp_f is None and not cut.ice and not _promised(cut) and cut.hours > 1:
        assert actions == {"discard"}


@given(item=items, cut=cuts)
def test_every_answer_has_a_reason_and_a_row(item: Item, cut: Cut) -> None:
    found = judged(item, cut)
    assert all(found.reasons)
    assert found.rules
    assert (found.verdict is Verdict.DISCARD) == (found.action == "discard")
    assert (found.verdict is Verdict.SOUND) == (found.action == "keep")


def test_what_to_use_first_stands_on_top_and_what_must_go_last() -> None:
    icy = Cut(FREEZER, 30, False, None, True)

    def rank(food: str, state: State = State.SEALED, cut: Cut = icy) -> int:
        facts = next(one for one in KNOWN if one.name == food)
        return judged((facts, Method.FROZEN, state), cut).rank

    thawed = [rank(food, State.THAWED) for food in ("cod", "chickens", "ground beef", "beef")]
    closed = [rank(food) for food in ("cod", "chickens", "beef", "stew", "milk", "peas")]
    order = [
        *thawed,
        *closed,
        rank("peas", cut=replace(icy, hours=3)),
        rank("cod", cut=replace(icy, ice=False)),
    ]
    assert order == sorted(order)
    assert len(set(order)) == len(order)


@pytest.mark.parametrize("method", [Method.BOILING_WATER, Method.PRESSURE])
@pytest.mark.parametrize(
    "cut", [Cut(FRIDGE, 30, False, 70, None), Cut(FRIDGE, 9, False, None, None)]
)
def test_a_sealed_jar_needs_no_cold(method: Method, cut: Cut) -> None:
    peaches = next(one for one in KNOWN if one.name == "peaches")
    assert judged((peaches, method, State.SEALED), cut).action == "keep"


def test_low_acid_food_in_boiling_water_is_never_called_shelf_stable() -> None:
    beans = next(one for one in KNOWN if one.name == "runner beans")
    cut = Cut(FRIDGE, 5, False, None, None)
    assert judged((beans, Method.BOILING_WATER, State.SEALED), cut).action == "discard"


@pytest.mark.parametrize(
    ("appliance", "length", "read"),
    [
        (Climate.CELLAR, 5, None),
        (FRIDGE, -1, None),
        (FRIDGE, float("nan"), None),
        (FREEZER, float("inf"), None),
        (FREEZER, 5, float("nan")),
    ],
)
def test_a_cut_that_makes_no_sense_is_refused(
    appliance: Climate, length: float, read: float | None
) -> None:
    with pytest.raises(ValueError, match=r"refrigerator|length|temperature"):
        Cut(appliance, length, False, read, None)


@pytest.mark.parametrize(
    ("old", "new", "column"),
    [
        ("fridge-meat,fridge,", "fridge-meat,cellar,", "appliance"),
        (",group:meat,,,held_above_40_over_2h", ",group:wood,,,held_above_40_over_2h", "foods"),
        (",group:meat,,,held_above_40_over_2h", ",,,,held_above_40_over_2h", "foods"),
        (",group:meat,,,held_above_40_over_2h", ",group:meat,boiled,,held_above_40_over_2h",
         "methods"),
        (",group:meat,,,held_above_40_over_2h", ",group:meat,,asleep,held_above_40_over_2h",
         "states"),
        (",group:meat,,,held_above_40_over_2h", ",group:meat,,,thawed_above_40", "condition"),
        ("door_shut,keep,4,", "door_shut,keep,6,", "hours"),
        ("fridge-fish,", "fridge-meat,", "rule_id"),
        ("door_shut_half,keep,24,", "door_shut_full,keep,48,", "condition"),
        (",pc-ncsu-622,", ",nobody,", "source_id"),
        (",pc-ncsu-622,read", ",pc-ncsu-622,sure", "trust"),
        ("thawed_above_40,discard,,Seafood", "thawed_above_40,sniff,,Seafood", "verdict"),
        ("named:seitan", "named:bread", "foods"),
    ],
)  # fmt: skip
def test_a_bad_cell_is_named_by_file_row_and_column(
    tmp_path: Path, old: str, new: str, column: str
) -> None:
    shutil.copy(data_dir() / "outage.csv", tmp_path / "outage.csv")
    text = (tmp_path / "outage.csv").read_text(encoding="utf-8")
    assert old in text
    (tmp_path / "outage.csv").write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(DataError, match=rf"outage\.csv row \d+, column {column}:"):
        read_outage(tmp_path, load_tables())
