"""Readings drive what stands in a place; a household's own rules are only ever stricter."""

from __future__ import annotations

import time
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.keeping.harm import kept_as
from pantry_tui.core.log.payloads import RuleAdded
from pantry_tui.core.model import Batch
from pantry_tui.core.words import Climate, Kind, Method, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.lookup import own
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, one_batch, places, readings, undo, view
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    path = tmp_path / "store.db"
    create(path, people=4)
    with open_pantry(path, TODAY) as pantry:
        for name, climate in (
            ("larder", "pantry"),
            ("cellar", "cellar"),
            ("fridge", "fridge"),
            ("freezer", "freezer"),
            ("attic", "room"),
        ):
            places.add(pantry, name, climate)
        yield pantry


def up(p: Pantry, food: str, method: str, place: str, ago: int = 0, **process: str) -> str:
    made = (p.today - timedelta(days=ago)).isoformat()
    reading = putup.from_flags(p, food=food, method=method, place=place, made=made, process=process)
    return putup.put_up(p, reading).code


def at(p: Pantry, hour: float) -> None:
    """It is that hour of the day."""
    p.clock = Clock(TODAY, round(hour * 60))


def only(p: Pantry, code: str) -> DueRow:
    (row,) = one_batch.show(p, code).rows
    return row


def test_a_warm_fridge_ends_what_it_held_safe_and_says_so(p: Pantry) -> None:
    code = up(p, "lasagne", "cooked meal", "fridge")
    said = readings.read(p, "fridge", 45)
    assert any("fridge measured 45 F" in one for one in said.warnings)
    assert any("Since when" in one for one in said.warnings)
    assert only(p, code).verdict is Verdict.DISCARD, "nobody knows since when"
    readings.read(p, "fridge", 38)
    assert only(p, code).verdict is Verdict.DISCARD, "cold again does not bring it back"


def test_damp_air_says_to_feel_the_dried_food_that_stands_in_it(p: Pantry) -> None:
    """No figure is published for it, so its dates stay."""
    up(p, "potatoes", "cellar-stored", "larder")
    assert not readings.read(p, "larder", 60, 95).warnings, "nothing dried stands there"
    code = up(p, "apples", "dried", "larder")
    before = only(p, code)
    (said,) = readings.read(p, "larder", 60, 95).warnings
    assert f"95 % humidity on Wed 25 Nov 2026, and dried food stands there ({code})" in said
    assert "limp" in said
    assert said in readings.notices(p)
    assert only(p, code).discard_after == before.discard_after
    assert not readings.read(p, "larder", 60, 50).warnings
    assert readings.notices(p) == [], "drier again"


def test_taking_a_reading_back_brings_the_date_back(p: Pantry) -> None:
    code = up(p, "lasagne", "cooked meal", "fridge")
    before = only(p, code)
    readings.read(p, "fridge", 45)
    undo.undo(p)
    assert only(p, code) == before


def test_a_freezer_at_10_f_for_a_month_costs_four_months_of_eight(p: Pantry) -> None:
    code = up(p, "peas", "frozen", "freezer", ago=30)
    assert only(p, code).best_by == date(2027, 6, 26)
    readings.read(p, "freezer", 10, at=TODAY - timedelta(days=30))
    said = readings.read(p, "freezer", 0)
    row = only(p, code)
    assert row.best_by is not None
    lost = date(2027, 6, 26) - row.best_by
    # A month at +10 F spends four months of life: 30 days of a quarter of 243.
    assert 85 <= lost.days <= 95
    assert row.discard_after is None, "quality only"
    assert said.warnings == () or "lose quality" in said.warnings[0]


def test_a_thawed_out_freezer_is_judged_as_thawed(p: Pantry) -> None:
    code = up(p, "ground beef", "frozen", "freezer", ago=30)
    readings.read(p, "freezer", 36, at=TODAY - timedelta(days=3))
    readings.read(p, "freezer", 0, at=TODAY - timedelta(days=2))
    assert only(p, code).verdict is Verdict.DISCARD


def test_cellar_crops_are_held_against_their_range(p: Pantry) -> None:
    beets = up(p, "beets", "cellar-stored", "cellar")
    squash = up(p, "winter squash", "cellar-stored", "larder")
    readings.read(p, "cellar", 32)
    at_32 = only(p, beets).best_by
    readings.read(p, "cellar", 50)
    at_50 = only(p, beets).best_by
    assert at_50 is not None
    assert at_32 is not None
    assert TODAY + timedelta(weeks=6) < at_32 <= TODAY + timedelta(weeks=7)
    assert at_50 < at_32
    readings.read(p, "cellar", 28)
    assert "freezes" in only(p, beets).reasons[0]
    readings.read(p, "larder", 45)
    assert "hurt by cold" in only(p, squash).reasons[0]


@pytest.mark.parametrize("zone", ["UTC", "Pacific/Auckland", "America/Los_Angeles"])
def test_a_day_of_a_quality_life_begins_at_home(
    tmp_path: Path, zone: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TZ", zone)
    time.tzset()
    try:
        create(tmp_path / "home.db")
        with open_pantry(tmp_path / "home.db", TODAY) as p:
            places.add(p, "larder", "pantry")
            code = up(p, "carrots", "dried", "larder")
            readings.read(p, "larder", 80)
            assert only(p, code).best_by == TODAY + timedelta(days=92)  # 3 months
    finally:
        monkeypatch.undo()
        time.tzset()


def test_dried_food_between_two_published_temperatures(p: Pantry) -> None:
    code = up(p, "carrots", "dried", "larder")
    lives = []
    for warm in (55, 60, 70, 80, 90):
        readings.read(p, "larder", warm)
        best = only(p, code).best_by
        assert best is not None
        lives.append((best - TODAY).days)
    assert lives[0] == lives[1] == 181  # 25 Nov + 6 months
    assert lives[2] == pytest.approx(128, abs=1)  # 181 days times the root of one half
    assert lives[3] == 92  # 25 Nov + 3 months
    assert lives[4] == 46  # half of that


def test_an_assumed_warmth_says_so_and_a_reading_takes_it_back(p: Pantry) -> None:
    code = up(p, "peaches", "boiling-water canned", "larder")
    assert any("assumed" in one for one in only(p, code).reasons)
    readings.read(p, "larder", 58)
    assert not any("assumed" in one for one in only(p, code).reasons)
    readings.read(p, "larder", 100)
    assert only(p, code).verdict is Verdict.UNKNOWN


@pytest.mark.parametrize(
    ("how", "allowed"), [("fridge", True), ("microwave", False), ("cold water", False)]
)
def test_refreezing_depends_on_how_it_was_thawed(p: Pantry, how: str, allowed: bool) -> None:
    code = up(p, "ground beef", "frozen", "freezer", ago=30)
    act.thaw(p, code, how)
    thawed = only(p, code)
    assert thawed.state is State.THAWED
    assert thawed.discard_after == TODAY + timedelta(days=2 if allowed else 0)
    said = act.move(p, code, "freezer")
    if not allowed:
        assert any("cooked" in one for one in said.warnings)
        return
    assert any("stays as it was" in one for one in said.warnings)
    assert only(p, code).discard_after == thawed.discard_after


def test_vacuum_packs_have_their_own_rules(p: Pantry) -> None:
    smoked = up(p, "trout", "hot smoked", "fridge", vacuum="yes")
    assert only(p, smoked).discard_after == TODAY + timedelta(days=5)
    assert only(p, up(p, "trout", "hot smoked", "fridge")).discard_after == TODAY + timedelta(10)
    frozen = up(p, "salmon", "frozen", "freezer", vacuum="yes")
    with pytest.raises(Refused, match="opened or pierced"):
        act.thaw(p, frozen)
    act.open_(p, frozen, at=At(TODAY, 600))
    act.thaw(p, frozen, at=At(TODAY, 610))
    assert only(p, frozen).discard_after == TODAY + timedelta(days=2)
    with pytest.raises(Refused, match=r"[Vv]acuum"):
        up(p, "carrots", "cellar-stored", "cellar", vacuum="yes")
    line = putup.read(p, "2 packs trout, hot smoked, vacuum packed, fridge")
    assert dict(line.process)["vacuum"] == "yes"
    assert line.unread == ()


def test_opened_jars_that_are_frozen_keep_their_strict_date(p: Pantry) -> None:
    code = up(p, "crushed tomatoes", "boiling-water canned", "larder")
    act.open_(p, code)
    opened = only(p, code).discard_after
    act.move(p, code, "freezer")
    assert only(p, code).discard_after == opened


def test_the_chain_can_be_followed_by_hand(p: Pantry) -> None:
    code = up(p, "apples", "dried", "attic", ago=90)
    act.move(p, code, "larder")
    ((_, steps),) = one_batch.show(p, code).chain
    text = "\n".join(steps)
    assert "sealed in attic (room, 70 F assumed)" in text
    assert "sealed in larder (pantry, 60 F assumed)" in text
    assert "% of it spent before" in text
    assert "National Center for Home Food Preservation" in text


def test_a_rule_of_ones_own_is_stricter_only_and_marked(p: Pantry) -> None:
    code = up(p, "chicken soup", "cooked meal", "fridge")
    with pytest.raises(Refused, match="stricter"):
        own.add_rule(
            p, "cooked meal", "chicken soup", climate="fridge", keeps="5 days", kind="safety"
        )
    own.add_rule(p, "cooked meal", "chicken soup", climate="fridge", keeps="2 days", kind="safety")
    row = only(p, code)
    assert row.discard_after == TODAY + timedelta(days=2)
    assert any("Your own rule" in one for one in row.reasons)
    steps = "\n".join(step for _, steps in one_batch.show(p, code).chain for step in steps)
    assert "your own rule" in steps
    assert "foodsafety.gov" in steps, "the published one shows too"
    undo.undo(p)
    assert only(p, code).discard_after == TODAY + timedelta(days=3)
    with pytest.raises(Refused, match="do not let"):
        own.add_rule(p, "in oil", "garlic", climate="room", keeps="2 days", kind="safety")


@pytest.mark.parametrize(
    "line",
    ["1 box milk", "1 pack bacon", "2 tins beef stew", "1 jar garlic in oil, printed=2027-03-01",
     "1 pack ham, printed=2026-12-30 dated=use-by"],
)  # fmt: skip
@pytest.mark.parametrize("under", ["bought in", "judged"])
def test_a_rule_for_bought_food_counts_by_whichever_method_it_was_booked(
    p: Pantry, line: str, under: str
) -> None:
    """Older logs have it under "bought in", newer ones under the method of a plain pack."""
    code = putup.put_up(p, putup.read(p, f"{line}, bought in, fridge")).code
    (batch,) = p.stock.batches.values()
    plain = Batch("", "", batch.food, Method.BOUGHT, None)
    how = Method.BOUGHT if under == "bought in" else kept_as(plain)
    fridge, safety = Climate.FRIDGE, Kind.SAFETY
    p.book(RuleAdded(how, batch.food.name, State.SEALED, fridge, safety, 1, "days"))
    assert only(p, code).discard_after == p.today + timedelta(days=1)


@pytest.mark.parametrize(
    ("food", "longer"), [("hot dogs", "3 weeks"), ("salmon", "4 days"), ("chicken soup", "4 days")]
)
def test_a_rule_of_ones_own_for_bought_food_counts(p: Pantry, food: str, longer: str) -> None:
    """It is judged by the figures of another method than its own."""
    code = up(p, food, "bought in", "fridge")
    with pytest.raises(Refused, match="stricter"):
        own.add_rule(p, "bought in", food, climate="fridge", keeps=longer, kind="safety")
    own.add_rule(p, "bought in", food, climate="fridge", keeps="1 day", kind="safety")
    assert only(p, code).discard_after == TODAY + timedelta(days=1)


@pytest.mark.parametrize(
    ("method", "food", "climate"),
    [
        ("in oil", "feta", "fridge"), ("in oil", "garlic", "freezer"), ("salted", "eggs", "fridge"),
        ("vinegar pickle", "fiddleheads", "larder"), ("fermented paste", "soybeans", "cellar"),
    ],
)  # fmt: skip
def test_no_number_of_ones_own_stands_where_nothing_is_published_of_what_can_hurt(
    p: Pantry, method: str, food: str, climate: str
) -> None:
    if p.facts(food) is None:
        own.add_food(p, food, "vegetable", "low-acid")
    climate = {"larder": "pantry"}.get(climate, climate)
    with pytest.raises(Refused, match="Nothing is published"):
        own.add_rule(p, method, food, climate=climate, keeps="9 days", kind="safety")
    assert not p.book_of_rules.own


def test_an_end_of_ones_own_is_stricter_than_none(p: Pantry) -> None:
    """Where a life is published without an end, and on what cannot hurt."""
    own.add_rule(p, "frozen", "ground beef", climate="freezer", keeps="3 months", kind="safety")
    own.add_rule(p, "alcohol ferment", "cider", climate="cellar", keeps="2 years", kind="safety")
    assert len(p.book_of_rules.own) == 2


def test_a_name_of_a_known_food_is_given_to_no_other(p: Pantry) -> None:
    with pytest.raises(Refused, match="known already, as spinach"):
        own.add_food(p, "zork", "fruit", "acid", ["spinach"])
    assert not p.own_foods


@pytest.mark.parametrize("food", ["fiddleheads", "chilli crunch"])
def test_acid_by_ones_own_word_makes_no_pickle_that_is_offered(p: Pantry, food: str) -> None:
    own.add_food(p, food, "relish", "acid")
    code = up(p, food, "vinegar pickle", "larder")
    assert only(p, code).verdict is Verdict.UNKNOWN
    with pytest.raises(Refused, match="your own word"):
        act.use(p, code)
    line = f"2 pints {food[:4]} pots, vinegar pickle, larder, group=relish, acidity=acidified"
    typed = putup.put_up(p, putup.read(p, line.replace(",", ", ")))
    assert typed.verdict is Verdict.UNKNOWN


def test_what_no_publication_covers_stays_unknown_under_a_rule_of_ones_own(p: Pantry) -> None:
    code = up(p, "cider", "alcohol ferment", "cellar")
    act.ready(p, code)
    own.add_rule(p, "alcohol ferment", "cider", climate="cellar", keeps="9 months", kind="quality")
    row = only(p, code)
    assert row.verdict is Verdict.UNKNOWN
    assert row.best_by == date(2027, 8, 25)


def test_a_food_of_ones_own_is_judged_by_the_strictest_of_its_group(p: Pantry) -> None:
    own.add_food(p, "Elder Shoots", "herb", "low-acid", ["shoots of elder"])
    code = up(p, "elder shoots", "in oil", "fridge")
    assert only(p, code).discard_after == TODAY + timedelta(days=2)
    assert putup.read(p, "2 jars shoots of elder, in oil, fridge").food == "elder shoots"
    with pytest.raises(Refused):
        own.add_food(p, "carrots", "vegetable", "low-acid")
    with pytest.raises(BadInput):
        own.add_food(p, "moss", "plant", "low-acid")
    assert len(list(own.listing(p))) == 1


def test_a_look_at_an_earlier_hour_changes_nothing(p: Pantry) -> None:
    """What is still to come at that hour counts as then only as long as it is looked at."""
    code = up(p, "ground beef", "frozen", "freezer", ago=30)
    at(p, 20)
    act.move(p, code, "larder")
    readings.read(p, "larder", 61)
    undo.undo(p)
    at(p, 20.5)
    before = only(p, code)
    at(p, 18.5)
    only(p, code)
    at(p, 20.5)
    with open_pantry(p.path, TODAY) as again:
        again.clock = p.clock
        assert only(again, code) == before


def test_a_life_that_began_elsewhere_is_not_said_to_begin_where_it_went_on(p: Pantry) -> None:
    code = up(p, "carrots", "dried", "larder")
    readings.read(p, "larder", 80)
    whole = only(p, code).reasons[0]
    assert "from Wed 25 Nov 2026" in whole
    p.today = TODAY + timedelta(days=30)
    readings.read(p, "larder", 90)
    assert "what was left of 3 months on Fri 25 Dec 2026" in only(p, code).reasons[0]


def test_what_is_lost_is_lost_by_the_clocks_of_two_zones(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def zone(name: str) -> None:
        monkeypatch.setenv("TZ", name)
        time.tzset()

    def on(day: int, hour: int) -> Clock:
        return Clock(date(2026, 11, day), hour * 60)

    path = tmp_path / "home.db"
    try:
        zone("America/Los_Angeles")
        create(path)
        with open_pantry(path, on(24, 8)) as p:
            for name, climate in (("fridge", "fridge"), ("kitchen", "room")):
                places.add(p, name, climate)
            stew = up(p, "beef stew", "cooked meal", "fridge")
        zone("UTC")
        with open_pantry(path, on(25, 1)) as p:  # 17:00 at home, the day before
            act.move(p, stew, "kitchen")
        zone("America/Los_Angeles")
        with open_pantry(path, on(24, 21)) as p:
            act.move(p, stew, "fridge")
            (row,) = view.due(p)
            assert (row.verdict, row.discard_after) == (Verdict.DISCARD, None)
        zone("UTC")
        with open_pantry(path, on(25, 6)) as p:
            readings.read(p, "fridge", 37)
            assert only(p, stew).discard_after is None
    finally:
        monkeypatch.undo()
        time.tzset()


@pytest.mark.parametrize(
    "line", ["2 lb ground beef, fresh", "3 jars stew, cooked meal", "1 pack milk, fresh"]
)
def test_a_warm_refrigerator_is_no_cold_place_for_being_called_a_freezer(
    tmp_path: Path, line: str
) -> None:
    """What began to spoil there goes on spoiling until the cold was measured."""
    path = tmp_path / "home.db"
    create(path)
    with open_pantry(path, Clock(TODAY, 13 * 60)) as p:
        places.add(p, "fridge", "fridge")
        code = putup.put_up(p, putup.read(p, f"{line}, fridge")).code
        readings.read(p, "fridge", 60.0, since=30)
        places.change(p, "fridge", climate="freezer")
    with open_pantry(path, Clock(TODAY, 18 * 60)) as p:
        assert only(p, code).verdict is Verdict.DISCARD
        readings.read(p, "fridge", 0.0)
        assert only(p, code).verdict is Verdict.DISCARD
