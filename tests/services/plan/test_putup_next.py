"""How much to put up next: from the log, from the year book, with margins, gifts, lives, pounds;
and which food stands in for a crop that failed."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.books.logbook import log
from pantry_tui.services.books.losses import losses, season
from pantry_tui.services.books.rows import FoodAhead, OutlookView
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.putup_next import Ask
from pantry_tui.services.plan.substitute import read_line, set_substitutes, substitutes
from pantry_tui.services.stock import act, places, undo
from pantry_tui.services.stock.seen import At
from tests.services.plan.putting_up import up

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=4)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("cold box", "fridge"), ("bins", "cellar")):
            places.add(pantry, name, climate)
        yield pantry


def of(found: OutlookView, food: str) -> FoodAhead:
    return next(one for one in found.foods if one.food == food)


def jars(found: OutlookView, food: str) -> int:
    count = of(found, food).put_up
    assert count is not None
    return count


def eat_weekly(p: Pantry, codes: list[str], weeks: int, until: date | None = None) -> None:
    """One of each a week, the last one a week before today."""
    for week in range(weeks, 0, -1):
        for code in codes:
            act.use(p, code, at=At((until or p.today) - timedelta(weeks=week)))


def test_a_jar_a_week_is_a_year_of_jars_and_the_pounds_for_them(p: Pantry) -> None:
    old = up(p, "40 pint jars peaches, boiling-water canned, larder, 2025-08-01")
    code = up(p, "60 pint jars peaches, boiling-water canned, larder, 2026-08-01")
    eat_weekly(p, [old], 40, TODAY - timedelta(weeks=10))
    eat_weekly(p, [code], 10)
    peaches = of(outlook(p), "peaches")
    # 50 jars left, 36 weeks to August: 14 left over then; 52 - 14 = 38 jars, 1.25 lb each.
    assert peaches.left == pytest.approx(14 * 4, abs=4)
    assert peaches.put_up == pytest.approx(38, abs=2)
    assert peaches.put_up is not None
    assert peaches.pounds == pytest.approx(peaches.put_up * 1.25)
    assert peaches.crop == "peaches"
    assert "copy seen" in peaches.pounds_note
    assert peaches.container == "pint jars"
    assert "as eaten" in peaches.reckoning
    assert "52 weeks" in peaches.reckoning
    more = of(outlook(p, ask=Ask(margin=0.1)), "peaches")
    assert more.put_up == pytest.approx(peaches.put_up + 5.2, abs=1)


def test_the_book_of_the_last_year_speaks_where_the_log_is_too_short(p: Pantry) -> None:
    p.today = date(2024, 8, 1)
    old = up(p, "30 pint jars plums, boiling-water canned, larder")
    p.today = date(2025, 3, 1)
    act.use(p, old, "20")
    act.give(p, old, 4, "Aunt Sunniva")
    act.discard(p, old, 3, "seal failed")
    act.discard(p, old, 3, "past its date")
    p.today = date(2025, 8, 1)
    up(p, "20 pint jars plums, boiling-water canned, larder")
    p.today = date(2026, 4, 1)
    plums = of(outlook(p), "plums")
    # Gone by 8 March 2025, in 31.3 weeks: 20 jars eaten are 80 servings, 2.56 a week, 133 a year;
    # four jars (16) to give away; 3 of 30 jars spoiled (what was too much does not count): a ninth
    # more: 165. What is left in August 2026 is taken off.
    assert "by last year's book" in plums.reckoning
    assert plums.put_up == pytest.approx((165 - plums.left) / 4, abs=1)
    assert "16 to give away" in plums.reckoning
    assert "10% for what spoiled" in plums.reckoning


def test_two_years_are_covered_only_as_far_as_it_keeps(p: Pantry) -> None:
    pickled = putup.from_flags(
        p, food="cucumbers", method="fridge pickle", count=4, size="pint jars", place="cold box"
    )
    putup.put_up(p, pickled)
    up(p, "9 pint jars peaches, boiling-water canned, larder")
    one, two = outlook(p), outlook(p, ask=Ask(years=2))
    assert of(one, "peaches").short_lived == ""
    assert one.notes == ()
    assert "12 months" in of(two, "peaches").short_lived
    pickles = of(one, "cucumbers")
    assert "keeps" in pickles.short_lived
    assert "not known yet" in pickles.reckoning
    assert len(two.notes) == 2


def test_what_ran_out_is_still_planned_for_twice_of_it_at_most(p: Pantry) -> None:
    up_to = [
        (f"10 pint jars peaches, boiling-water canned, larder, {y}-08-01", y) for y in (2025, 2026)
    ]
    for line, year in up_to:
        p.today = date(year, 11, 25)
        code = up(p, line)
        eat_weekly(p, [code], 10)
    found = outlook(p)
    peaches = of(found, "peaches")
    assert (peaches.servings, peaches.put_up) == (0, 20)
    assert "at most twice what there was" in peaches.reckoning
    assert "none left" in peaches.pace_says
    assert found.alarms == (), "nothing can be rationed any more"


def test_a_crate_is_filled_with_what_is_eaten_while_it_keeps(p: Pantry) -> None:
    """Thirty pounds, ninety servings in the year before: two a week, 33 in 120 days, 11 lb."""
    old = up(p, "1 crate carrots, cellar-stored, bins, 2025-10-01 amount=30lb")
    for week in range(45):
        p.today = date(2025, 11, 1) + timedelta(weeks=week)
        act.use(p, old, "0.666 lb")
    p.today = TODAY
    act.discard(p, old, "all", "past its date")
    up(p, "2 crates carrots, cellar-stored, bins, 2026-10-01 amount=30lb")
    carrots = of(outlook(p), "carrots")
    assert carrots.servings == 180
    assert carrots.put_up == 1
    assert carrots.pounds == pytest.approx(11, abs=1)


def test_no_pounds_where_no_yield_or_no_volume_is_known(p: Pantry) -> None:
    up(p, "5 jars peaches, boiling-water canned, larder")
    up(p, "5 pint jars marmalade, jam, larder")
    found = outlook(p)
    assert of(found, "peaches").pounds is None
    assert of(found, "marmalades").pounds is None


def test_the_household_holds_its_groups(p: Pantry) -> None:
    up(p, "8 pint jars peaches, boiling-water canned, larder, 2026-08-01")
    up(p, "8 pint jars beets, pressure canned, larder, 2026-08-01")
    found = outlook(p)
    assert [one.food for one in found.groups] == ["fruit", "vegetable"]
    assert found.household.servings == sum(one.servings for one in found.foods)
    together = sum(group.pace_can for group in found.groups)
    assert found.household.pace_can == pytest.approx(together, abs=0.02)
    assert found.household.pace_says.startswith("Whole household: ")
    assert outlook(p, date(2026, 12, 30)).household.servings == 64


def test_both_alarms_are_heard(p: Pantry) -> None:
    due = up(p, "60 pint jars peaches, boiling-water canned, larder, 2025-12-20")
    for food in ("pears", "plums", "apricots"):
        up(p, f"50 pint jars {food}, boiling-water canned, larder, 2025-12-28")
    code = up(p, "28 pint jars beets, pressure canned, larder, 2026-09-01")
    p.today = TODAY
    eat_weekly(p, [code], 9)
    found = outlook(p)
    assert len(found.alarms) == 3
    assert sum("pass their date" in one for one in found.alarms) == 2
    assert any(one.startswith("Beets: gone about") for one in found.alarms)
    assert sum(bool(one.hoarding) for one in found.foods) == 4
    assert due


@pytest.fixture
def orchard(p: Pantry) -> Pantry:
    """Peaches, plums, pears: eaten a jar, a jar and half a jar a week; then a bad peach year."""
    p.today = date(2025, 8, 1)
    peaches = up(p, "52 pint jars peaches, boiling-water canned, larder")
    plums = up(p, "52 pint jars plums, boiling-water canned, larder")
    pears = up(p, "52 pint jars pears, boiling-water canned, larder")
    p.today = date(2026, 8, 1)
    for week in range(50, 0, -1):
        p.today = date(2026, 8, 1) - timedelta(weeks=week)
        act.use(p, peaches)
        act.use(p, plums)
        if week % 2:
            act.use(p, pears)
    p.today = date(2026, 7, 20)
    up(p, "8 pint jars peaches, boiling-water canned, larder")
    p.today = date(2026, 8, 2)
    return p


def test_substitutes_share_what_a_failed_crop_leaves_open(orchard: Pantry) -> None:
    before = outlook(orchard)
    assert before.shifts == ()
    set_substitutes(orchard, "peaches", ["plums", "pears"])
    after = outlook(orchard)
    (said,) = after.shifts
    assert said.startswith("Peaches gave 8 of ")
    target = int(said.split(" of ")[1].split()[0])
    more = {food: jars(after, food) - jars(before, food) for food in ("plums", "pears")}
    assert f"{more['plums']} more jars of plums, {more['pears']} of pears." in said
    assert sum(more.values()) == pytest.approx(target - 8, abs=1)
    assert more["plums"] == pytest.approx(2 * more["pears"], rel=0.1), "by their pace"
    assert of(after, "peaches").put_up == of(before, "peaches").put_up
    undo.undo(orchard)
    assert outlook(orchard).shifts == ()
    assert substitutes(orchard) == {}


def test_a_good_year_or_a_harvest_to_come_shifts_nothing(orchard: Pantry) -> None:
    set_substitutes(orchard, "peaches", ["plums", "pears"])
    up(orchard, "30 pint jars peaches, boiling-water canned, larder")
    assert outlook(orchard).shifts == ()
    undo.undo(orchard)
    assert len(outlook(orchard).shifts) == 1
    orchard.today = date(2026, 6, 30)
    assert outlook(orchard).shifts == (), "peaches are still to come"
    orchard.today = date(2026, 10, 1)
    (late,) = outlook(orchard).shifts
    assert "no substitute" in late


def test_substitutes_are_read_kept_and_taken_back(p: Pantry) -> None:
    assert read_line(p, ["peaches", "with", "plums", "pears"]) == ("peaches", ("plums", "pears"))
    line = ["sweet", "corn", "with", "lima", "beans", "and", "snap", "beans"]
    assert read_line(p, line) == ("sweet corn", ("lima beans", "snap beans"))
    set_substitutes(p, "peach", ["plum", "pears"])
    assert substitutes(p) == {"peaches": ("plums", "pears")}
    assert "stand in for peaches" in log(p)[-1]
    set_substitutes(p, *read_line(p, ["peaches", "with", "nothing"]))
    assert substitutes(p) == {}
    undo.undo(p)
    assert substitutes(p) == {"peaches": ("plums", "pears")}
    for wrong in (["peaches"], ["peaches", "with"], ["with", "plums"]):
        with pytest.raises(BadInput):
            read_line(p, wrong)
    with pytest.raises(BadInput, match="no known food"):
        set_substitutes(p, "peaches", ["moon cheese"])
    with pytest.raises(BadInput, match="cannot stand in"):
        set_substitutes(p, "peaches", ["peach"])


def test_losses_by_season_and_as_a_share(p: Pantry) -> None:
    code = up(p, "8 pint jars plums, boiling-water canned, larder, 2026-08-01")
    p.today = date(2026, 12, 3)
    act.discard(p, code, 2, "past its date")
    p.today = date(2027, 2, 3)
    act.discard(p, code, 1, "past its date")
    p.today = date(2027, 4, 3)
    act.discard(p, code, 1, "mould")
    found = losses(p)
    assert [(row.why, row.servings, row.share) for row in found.rows] == [
        ("past its date", 12, 0.375),
        ("mould", 4, 0.125),
    ]
    assert [(one.season, one.servings, one.share) for one in found.seasons] == [
        ("winter 2027", 12, 0.75),
        ("spring 2027", 4, 0.25),
    ]
    assert "12 servings" in found.changes[0]
    assert "4 servings" in found.changes[1]
    assert season(date(2026, 11, 30)) == "autumn 2026"


def test_what_is_only_bought_is_not_put_up(p: Pantry) -> None:
    """Tins of two years, eaten, and butter that stood fresh: nothing of them is named."""
    for year in (2025, 2026):
        p.today = date(year, 9, 1)
        tins = up(p, "24 tins tomatoes, bought, larder")
        up(p, "2 lb butter, fresh, cold box")
        for week in range(10):
            act.use(p, tins, at=At(date(year, 9, 2) + timedelta(weeks=week)))
    p.today = TODAY
    up(p, "2 lb butter, fresh, cold box")
    found = outlook(p)
    for food in ("tomatoes", "butter"):
        one = of(found, food)
        assert (one.put_up, one.pounds, one.container, one.ways) == (None, None, "", ())
        assert "bought" in one.reckoning
    assert found.household.put_up is None


def test_of_what_is_bought_beside_the_own_only_the_own_is_named(p: Pantry) -> None:
    """As much of tins as of jars is eaten: half of it is what the household wants of its jars."""
    for year in (2025, 2026):
        p.today = date(year, 9, 1)
        jars_of = up(p, "26 pint jars tomatoes, boiling-water canned, larder")
        tins = up(p, "60 tins tomatoes, bought, larder")
        eaten = range(52) if year == 2025 else range(12)
        for week in eaten:
            act.use(p, jars_of if week % 2 else tins, at=At(date(year, 9, 2) + timedelta(week * 7)))
    p.today = TODAY
    tomatoes = of(outlook(p), "tomatoes")
    assert tomatoes.container == "pint jars"
    assert "tin" not in str(tomatoes.ways)
    rate = float(tomatoes.reckoning.split()[0])
    assert rate < tomatoes.rate * 0.7


def test_what_nobody_ate_in_a_year_is_not_put_up_again(p: Pantry) -> None:
    up(p, "10 pint jars applesauce, boiling-water canned, larder, 2025-09-01")
    lost = up(p, "10 pint jars pears, boiling-water canned, larder, 2025-09-01")
    given = up(p, "10 pint jars plums, boiling-water canned, larder, 2025-09-01")
    act.discard(p, lost, "all", "past its date")
    act.give(p, given, 4, "Aunt Sunniva")
    up(p, "2 pint jars pears, boiling-water canned, larder, 2026-09-01")
    assert jars(outlook(p), "applesauce") != 0, "who books no eating may have eaten them all"
    peaches = up(p, "3 pint jars peaches, boiling-water canned, larder, 2025-09-01")
    act.use(p, peaches)
    found = outlook(p)
    assert jars(found, "applesauce") == 0
    assert "none eaten in a year" in of(found, "applesauce").reckoning
    assert jars(found, "pears") == 0


def test_what_was_begun_lately_is_put_up_again(p: Pantry) -> None:
    sauce = up(p, "10 pint jars applesauce, boiling-water canned, larder, 2025-09-01")
    act.use(p, sauce, at=At(TODAY - timedelta(days=10)))
    assert jars(outlook(p), "applesauce") > 0
