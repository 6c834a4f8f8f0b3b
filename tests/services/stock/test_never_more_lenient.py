"""What a person says never makes food better than it is: half a record, a gift, a sign on what is
gone, a reason for throwing away, a move that may not be, a cut since nobody knows when."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.safety import seals
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused, Unclear
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.lookup import signs
from pantry_tui.services.output import labels, paper
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import (
    act,
    count,
    cut_hours,
    one_batch,
    outage,
    places,
    readings,
    reserve,
    view,
)
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 25)
NOON = 12 * 60
BEANS = "pint jars snap beans, pressure canned, larder"
BEAN = BEANS.replace("jars", "jar")
TESTED = "minutes=20 psi=11 canner=dial"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """A household that never said how high it lives, at noon."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", Clock(TODAY, NOON)) as pantry:
        for name, climate in (
            ("larder", "pantry"),
            ("kitchen", "room"),
            ("cellar", "cellar"),
            ("fridge", "fridge"),
            ("freezer", "freezer"),
        ):
            places.add(pantry, name, climate)
        yield pantry


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def row(p: Pantry, name: str) -> DueRow:
    (found,) = (one for one in view.due(p) if name in one.container_ids)
    return found


def later(p: Pantry, hours: float) -> None:
    """So many hours after noon."""
    days, minute = divmod(NOON + round(hours * 60), 24 * 60)
    p.clock = Clock(TODAY + timedelta(days=days), minute)


# -- the record of a process ----------------------------------------------------------------------


@pytest.mark.parametrize(
    "detail",
    ["colour=red", "minutes=soon", "altitude=high", "canner=cauldron", "state=happy", "jar=small"],
)
def test_nothing_typed_of_a_process_is_stored_unread(p: Pantry, detail: str) -> None:
    with pytest.raises(BadInput, match=detail.partition("=")[0]):
        up(p, f"1 {BEAN}, {detail}")
    code = up(p, f"1 {BEAN}")
    with pytest.raises(BadInput, match=detail.partition("=")[0]):
        correct(p, code, process=[tuple(detail.split("="))])  # type: ignore[list-item]


def test_no_process_is_said_wherever_the_jar_is_met_until_it_is_recorded(p: Pantry) -> None:
    code = up(p, f"3 {BEANS}, 2026-01-05")
    said = "No process recorded: not checked."
    assert row(p, f"{code}/1").usable, "one's own jar stays usable"
    assert said in row(p, f"{code}/1").standing
    assert said in one_batch.show(p, code).rows[0].reasons
    assert said in labels.label_text(labels.labels(p, [code]))
    assert said in str(paper.sheet(p, "due").notes)
    assert any(said in take.reasons for take in weeks.week(p).take if take.code == code)
    assert said in act.open_(p, f"{code}/1").warnings
    assert said in act.use(p, f"{code}/2").warnings
    correct(p, code, process=[("mins", "20")])
    assert "psi not checked" in str(row(p, f"{code}/3").standing), "half a record is no record"
    correct(p, code, process=[("pressure", "11"), ("gauge", "dial"), ("altitude", "900 ft")])
    assert row(p, f"{code}/3").standing == ()


def test_acid_of_which_nothing_is_said_is_named_wherever_the_jar_is_met(p: Pantry) -> None:
    """USDA AIB 539, guide 3: tomatoes take lemon juice or citric acid, canned in water or steam."""
    canned = "boiling-water canned, larder, minutes=50"
    code = up(p, f"4 quart jars crushed tomatoes, {canned}, 2026-01-05")
    correct(p, code, process=[("altitude", "900 ft")])
    said = "Acid not recorded: not checked. Record it: acid=lemon, or vinegar=5%."
    assert row(p, f"{code}/1").usable, "one's own jar stays usable"
    assert row(p, f"{code}/1").standing == (said,)
    assert said in one_batch.show(p, code).rows[0].reasons
    assert said in labels.labels(p, [code])[0].caution
    assert said in str(paper.sheet(p, "due").notes)
    assert any(said in take.reasons for take in weeks.week(p).take if take.code == code)
    assert said in act.open_(p, f"{code}/1").warnings
    assert said in act.use(p, f"{code}/2").warnings
    correct(p, code, process=[("acid", "citric")])
    assert row(p, f"{code}/3").standing == ()
    correct(p, code, process=[("acid", "none")])
    assert not row(p, f"{code}/3").usable


@pytest.mark.parametrize("food", ["crushed tomatoes", "figs", "salsa", "Asian pears"])
def test_where_nothing_at_all_is_recorded_both_are_named(p: Pantry, food: str) -> None:
    code = up(p, f"4 pint jars {food}, boiling-water canned, larder, 2026-01-05")
    process, acid = row(p, f"{code}/1").standing
    assert process == "No process recorded: not checked."
    assert acid.startswith("Acid not recorded: not checked.")
    label = labels.label_text(labels.labels(p, [code])[:1])
    assert process in label
    assert acid in label
    assert row(p, f"{code}/1").usable


@pytest.mark.parametrize("line", ["4 pint jars peaches, boiling-water canned, larder, 2026-01-05"])
def test_of_what_takes_no_acid_none_is_asked_for(p: Pantry, line: str) -> None:
    assert row(p, f"{up(p, line)}/1").standing == ("No process recorded: not checked.",)


def test_tomatoes_of_somebody_else_are_not_offered_while_nobody_knows_of_acid(p: Pantry) -> None:
    code = up(p, "1 quart jar crushed tomatoes, boiling-water canned, larder, gift=yes, minutes=50")
    assert (row(p, f"{code}/1").verdict, row(p, f"{code}/1").usable) == (Verdict.UNKNOWN, False)
    correct(p, code, process=[("acid", "lemon")])
    assert row(p, f"{code}/1").usable


def test_an_altitude_that_nobody_said_is_no_sea_level(p: Pantry) -> None:
    code = up(p, f"1 {BEAN}, {TESTED}")
    assert row(p, f"{code}/1").standing == (
        "Altitude not said: process checked for 1,000 ft only.",
        seals.FIRST,
    )
    assert household.facts(p).altitude_ft is None
    low = up(p, f"1 {BEAN}, minutes=20 psi=10 canner=dial")
    assert row(p, f"{low}/1").verdict is Verdict.UNKNOWN, "too little even there"
    household.change(p, 2500)
    high = putup.read(p, f"1 {BEAN}, {TESTED}")
    assert putup.preview(p, high).verdict is Verdict.UNKNOWN, "11 psi serve to 2,000 ft"


@pytest.mark.parametrize("whose", ["by=others", "from=Sunniva", "gift=yes"])
def test_a_low_acid_jar_of_somebody_else_is_not_offered(p: Pantry, whose: str) -> None:
    code = up(p, f"1 {BEAN}, {whose}")
    assert row(p, f"{code}/1").verdict is Verdict.UNKNOWN
    assert not row(p, f"{code}/1").usable
    for do in (act.use, act.open_, act.give):
        with pytest.raises(Refused, match="somebody else"):
            do(p, code)
    with pytest.raises(Refused):
        reserve.reserve(p, code)
    assert not weeks.week(p).take
    acid = up(p, f"1 pint jar peaches, boiling-water canned, larder, {whose}")
    assert row(p, f"{acid}/1").usable


@pytest.mark.parametrize("half", ["minutes=20", "psi=11 canner=dial"])
def test_half_a_record_of_somebody_elses_jar_is_no_process(p: Pantry, half: str) -> None:
    code = up(p, f"1 {BEAN}, by=others {half}")
    assert not row(p, f"{code}/1").usable
    whole = up(p, f"1 {BEAN}, by=others minutes=20 psi=11 canner=dial")
    assert row(p, f"{whole}/1").usable


@pytest.mark.parametrize(
    ("typed", "days"),
    [
        ("use by {}", 6), ("expires {}", 6), ("use-by={}", 6), ("expiry={}", 6),
        ("best before {}", 1), ("sell by {}", 1), ("printed={}", 1),
    ],
)  # fmt: skip
def test_a_use_by_is_told_from_the_other_dates_of_a_pack(p: Pantry, typed: str, days: int) -> None:
    code = up(p, f"1 kg chicken, bought in, fridge, {typed.format(p.today + timedelta(6))}")
    row = next(one for one in view.due(p) if one.code == code)
    assert row.discard_after == p.today + timedelta(days)
    correct(p, code, process=[("dated", "use-by")])
    row = next(one for one in view.due(p) if one.code == code)
    assert row.discard_after == p.today + timedelta(6)


def test_a_printed_date_is_that_of_bought_food(p: Pantry) -> None:
    tins = up(p, "2 tins peaches, bought in, larder, printed=2027-03-31")
    assert row(p, f"{tins}/1").best_by == date(2027, 3, 31)
    correct(p, tins, printed="feb 2027")
    assert row(p, f"{tins}/1").best_by == date(2027, 2, 28), "a month lasts to its end"
    with pytest.raises(BadInput, match="year"):
        up(p, "2 tins peaches, bought in, larder, printed=march")
    with pytest.raises(BadInput, match="printed"):
        up(p, f"1 {BEAN}, printed=2027-03-31")


def test_a_word_that_could_be_either_is_asked_about(p: Pantry) -> None:
    reading = putup.read(p, "3 pint jars chili, pressure canned, larder")
    assert reading.asks[0].choices == ("chili con carne", "chillies")
    with pytest.raises(BadInput, match="could be"):
        putup.put_up(p, reading)
    assert not putup.read(p, "3 pint jars chillies, pressure canned, larder").problems


# -- signs and sisters ----------------------------------------------------------------------------


def test_a_sign_on_a_jar_that_left_makes_its_sisters_be_looked_at(p: Pantry) -> None:
    code = up(p, f"3 {BEANS}, {TESTED}, 1 aug")
    act.give(p, f"{code}/1", to="Sunniva")
    said = signs.mark(p, f"{code}/1", "swollen lid")
    assert said.verdict is Verdict.DO_NOT_TASTE
    assert row(p, f"{code}/2").verdict is Verdict.UNKNOWN
    assert not row(p, f"{code}/2").usable
    with pytest.raises(Refused, match="looks sound"):
        act.use(p, f"{code}/2")


@pytest.mark.parametrize("why", ["bulging, leaking or spurting", "mould", "seal failed"])
def test_throwing_away_for_a_sign_is_the_sign(p: Pantry, why: str) -> None:
    code = up(p, f"3 {BEANS}, {TESTED}, 1 aug")
    told = act.discard(p, f"{code}/1", why=why)
    assert any("recall" in one for one in told.warnings)
    assert any("two bags" in one or "second bag" in one for one in told.warnings)
    assert not row(p, f"{code}/2").usable
    signs.mark(p, f"{code}/2", "looks sound")
    assert row(p, f"{code}/2").usable


def test_one_lid_found_open_within_a_day_makes_the_others_be_tested(p: Pantry) -> None:
    code = up(p, f"3 {BEANS}, {TESTED}")
    told = act.discard(p, f"{code}/1", why="seal failed")
    assert any("Test the lids" in one for one in told.warnings)
    assert row(p, f"{code}/2").usable, "no lock"


def test_a_jar_opened_long_ago_says_nothing_of_its_sisters(p: Pantry) -> None:
    code = up(p, f"3 {BEANS}, {TESTED}, 1 aug")
    act.open_(p, f"{code}/1", at=At(TODAY - timedelta(days=10)))
    signs.mark(p, f"{code}/1", "mould on food or lid")
    assert row(p, f"{code}/2").usable, "opened for longer than its three days"
    act.open_(p, f"{code}/2", at=At(TODAY - timedelta(days=2)))
    signs.mark(p, f"{code}/2", "mould on food or lid")
    assert not row(p, f"{code}/3").usable, "opened for less than it keeps open"


def test_one_bad_apple_is_culled_and_locks_no_crate(p: Pantry) -> None:
    code = up(p, "2 crates apples, cellar-stored, cellar, amount=38 lb")
    found = signs.mark(p, f"{code}/1", "soft brown rot")
    assert found.verdict not in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
    assert any("Take out and discard every piece" in one for one in found.do)
    assert row(p, f"{code}/2").usable
    assert row(p, f"{code}/1").usable


# -- moves, readings, cuts ------------------------------------------------------------------------


def test_a_move_that_may_not_be_is_booked_and_judged(p: Pantry) -> None:
    code = up(p, "2 tubs lasagne, cooked meal, fridge")
    told = act.move(p, f"{code}/1", "kitchen")
    assert any("may not stay in kitchen" in one for one in told.warnings)
    later(p, hours=3)
    assert row(p, f"{code}/1").verdict is Verdict.DISCARD
    act.move(p, f"{code}/1", "fridge")
    assert row(p, f"{code}/1").verdict is Verdict.DISCARD, "the cold does not bring it back"
    assert row(p, f"{code}/2").usable


def test_a_number_that_no_such_place_can_have_is_asked_about(p: Pantry) -> None:
    with pytest.raises(Unclear) as asked:
        readings.read_warmth(p, p.find_place("fridge").climate, "8")
    assert asked.value.choices == ("8F", "8C")
    assert readings.read_warmth(p, p.find_place("fridge").climate, "8C") == pytest.approx(46.4)
    assert readings.read_warmth(p, p.find_place("fridge").climate, "38") == 38
    with pytest.raises(Unclear):
        readings.read_warmth(p, p.find_place("freezer").climate, "-18")


def test_a_warm_reading_counts_since_it_was_last_cold_unless_it_is_said(p: Pantry) -> None:
    code = up(p, "1 tub lasagne, cooked meal, fridge")
    readings.read(p, "fridge", 38)
    later(p, hours=5)
    said = readings.read(p, "fridge", 50, since=readings.read_since("90m"))
    assert not any("Since when" in one for one in said.warnings)
    assert row(p, f"{code}/1").usable, "an hour and a half are under two"
    later(p, hours=6)
    readings.read(p, "fridge", 38)
    other = up(p, "1 tub curry, cooked meal, fridge")
    later(p, hours=11)
    said = readings.read(p, "fridge", 50)
    assert any("Since when is not said" in one for one in said.warnings)
    assert row(p, f"{other}/1").verdict is Verdict.DISCARD
    with pytest.raises(BadInput):
        readings.read_since("a while")
    # Of several lengths of time the longest counts, and a part of a minute as a whole one.
    lasted = {"1-2 hours": 120, "90 - 150 min": 150, "2-1 hours": 120, "2.01 h": 121}
    assert {said: readings.read_since(said) for said in lasted} == lasted


def test_since_an_hour_of_the_day_counts_until_the_reading() -> None:
    now = datetime.fromisoformat("2026-06-03 18:30")
    since = {"5 pm": 90, "17:00": 90, "noon": 390, "yesterday 18:00": 1470, "22:00": 1230}
    assert {said: readings.read_since(said, now) for said in since} == since
    for unknown in ("5 pm", "noon"):
        with pytest.raises(BadInput):
            readings.read_since(unknown)  # the hour of the reading is not known


def test_a_cut_strikes_what_stood_there_also_what_was_moved_out_since(p: Pantry) -> None:
    code = up(p, "2 tubs lasagne, cooked meal, fridge")
    later(p, hours=10)
    act.move(p, f"{code}/1", "freezer")
    where = p.find_place("fridge")
    cut = outage.cut_of(p, where, *outage.lasting(p, 9))
    found = {
        name: one.action for one in outage.judge_all(p, where, cut) for name in one.container_ids
    }
    assert found == {f"{code}/1": "discard", f"{code}/2": "discard"}
    assert all(row(p, f"{code}/{n}").usable for n in (1, 2)), "nothing is booked by looking"
    outage.book(p, where, cut)
    assert row(p, f"{code}/1").verdict is Verdict.DISCARD
    fresh = up(p, "1 tub curry, cooked meal, fridge")
    assert row(p, f"{fresh}/1").usable, "what came after it"


def test_two_cuts_with_half_an_hour_between_add_up(p: Pantry) -> None:
    code = up(p, "1 tub lasagne, cooked meal, fridge")
    where = p.find_place("fridge")
    begin = outage.now_of(p)
    later(p, hours=9)
    for start, end in ((0.5, 4), (4.5, 8)):
        first, last = begin + timedelta(hours=start), begin + timedelta(hours=end)
        outage.book(p, where, outage.cut_of(p, where, first, last))
    assert row(p, f"{code}/1").verdict is Verdict.DISCARD


def test_a_cut_since_nobody_knows_when_counts_since_the_last_cold_reading(p: Pantry) -> None:
    code = up(p, "1 tub lasagne, cooked meal, fridge")
    where = p.find_place("fridge")
    readings.read(p, "fridge", 38)
    later(p, hours=3)
    start, end = cut_hours.times("unknown", "15:00", TODAY)
    (short,) = outage.judge_all(p, where, outage.cut_of(p, where, start, end))
    assert short.action == "keep"
    later(p, hours=9)
    long_ = outage.cut_of(p, where, *cut_hours.times("unknown", "21:00", TODAY))
    assert outage.judge_all(p, where, long_)[0].action == "discard"
    outage.book(p, where, long_)
    assert row(p, f"{code}/1").verdict is Verdict.DISCARD
    with pytest.raises(BadInput, match="still to come"):
        outage.cut_of(p, where, *cut_hours.times("20:00", "23:00", TODAY))


def test_a_door_ajar_promises_no_hours(p: Pantry) -> None:
    code = up(p, "1 tub lasagne, cooked meal, fridge")
    where = p.find_place("fridge")
    later(p, hours=4)
    shut = outage.cut_of(p, where, *outage.lasting(p, 3))
    assert outage.judge_all(p, where, shut)[0].action == "keep"
    ajar = outage.cut_of(p, where, *outage.lasting(p, 3), ajar=True)
    assert outage.judge_all(p, where, ajar)[0].action == "discard"
    assert row(p, f"{code}/1").usable


def test_a_count_of_nought_by_mistake_is_counted_again(p: Pantry) -> None:
    code = up(p, f"5 {BEANS}, {TESTED}")
    place = p.find_place("larder")
    count.from_counts(p, place, {code: 0})
    count.finish(p, place)
    assert not view.due(p)
    count.from_counts(p, place, {code: 4})
    count.finish(p, place, at=At(TODAY, NOON))
    assert sum(one.count for one in view.due(p)) == 4


# -- the household's advice -----------------------------------------------------------------------


def test_a_household_may_follow_the_strictest_advice(p: Pantry) -> None:
    code = up(p, "1 tub lasagne, cooked meal, fridge")
    usual = row(p, f"{code}/1").discard_after
    told = household.change(p, advice="strictest")
    strict = row(p, f"{code}/1").discard_after
    assert usual is not None
    assert strict is not None
    assert strict < usual
    assert any("earlier" in one for one in told.warnings)
    assert any("later" in one for one in household.change(p, advice="usual").warnings)
    assert row(p, f"{code}/1").discard_after == usual
    with pytest.raises(BadInput, match="strictest"):
        household.change(p, advice="mild")


def test_the_three_answers_to_when_it_must_be_discarded(p: Pantry) -> None:
    jam = up(p, "1 pint jar strawberry jam, jam, larder")
    kraut = up(p, "1 crock sauerkraut, lactic ferment, cellar")
    assert row(p, f"{jam}/1").discard_after_why == "no limit"
    assert row(p, f"{kraut}/1").discard_after_why == "in progress"
    odd = up(p, "1 jar honey, bought in, freezer")
    assert row(p, f"{odd}/1").discard_after_why in ("no limit", "nothing published")
