"""What is packed anew: without air, out of the jar that was processed, a part of it alone."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup, repack, tending
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, correct, places, undo, view
from pantry_tui.services.stock.rows import DueRow


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    places.add(larder, "cellar", "cellar")
    places.add(larder, "chest", "freezer")
    return larder


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def row(p: Pantry, code: str) -> DueRow:
    (found,) = (one for one in view.due(p) if one.code == code)
    return found


def wait(p: Pantry, days: int) -> None:
    p.today += timedelta(days=days)


# -- without air -----------------------------------------------------------------------------------


@pytest.mark.parametrize("food", ["trout, hot smoked", "salmon, cold smoked, salt=3.6%"])
@pytest.mark.parametrize("how", ["repack", "from", "opened", "corrected"])
def test_smoked_fish_that_is_packed_without_air_has_the_five_days_of_such_a_pack(
    p: Pantry, food: str, how: str
) -> None:
    """Ten days from smoking, five under vacuum: whichever ends first."""
    code, smoked = up(p, f"4 packs {food}, fridge"), p.today
    wait(p, 1)
    if how == "from":
        new = up(p, f"1 vacuum pack {food}, fridge, from {code}/1")
    elif how == "corrected":
        new = repack.repack(p, f"{code}/1", "1 pack, fridge").code
        correct.correct(p, new, process=[("vacuum", "yes")])
    else:
        if how == "opened":
            act.open_(p, f"{code}/1")
        new = repack.repack(p, f"{code}/1", "1 vacuum pack, fridge").code
    assert row(p, new).discard_after == p.today + timedelta(days=5)
    wait(p, 8)
    assert row(p, new).verdict is Verdict.DISCARD
    late = repack.repack(p, f"{code}/3", "1 vacuum pack, fridge")
    assert late.discard_after == smoked + timedelta(days=10), "the limit that ran runs on"


def test_a_pack_without_air_is_shut_and_its_parts_are_not_once_it_is_opened(p: Pantry) -> None:
    code = up(p, "2 packs trout, hot smoked, fridge")
    new = repack.repack(p, f"{code}/1", "1 vacuum pack, fridge").code
    assert row(p, new).state is State.SEALED
    last = row(p, new).discard_after
    act.open_(p, new)
    assert (row(p, new).state, row(p, new).discard_after) == (State.OPEN, last)
    box = repack.repack(p, new, "1 box, fridge").code
    assert (row(p, box).state, row(p, box).discard_after) == (State.OPEN, last)
    batch = p.batch(box)
    assert batch is not None
    assert "vacuum" not in dict(batch.process), "a box is no pack without air"


def test_fish_in_a_pack_without_air_is_not_thawed_closed(p: Pantry) -> None:
    code = up(p, "2 packs trout, hot smoked, fridge")
    new = repack.repack(p, f"{code}/1", "1 vacuum pack, fridge").code
    act.move(p, new, "chest")
    with pytest.raises(Refused, match="opened or pierced"):
        act.thaw(p, new)


def test_a_pack_without_air_may_stand_where_one_that_is_put_up_may(p: Pantry) -> None:
    code = up(p, "4 packs carrots, fresh, fridge")
    with pytest.raises(Refused, match="stays in the cold"):
        up(p, f"1 vacuum pack carrots, fresh, larder, from {code}/1")
    with pytest.raises(Refused, match="stays in the cold"):
        repack.repack(p, f"{code}/1", "1 vacuum pack, larder")


def test_what_its_packing_alone_says_takes_no_record_away(p: Pantry) -> None:
    code = up(p, "2 packs salmon, cold smoked, fridge, salt=3.6%")
    new = p.batch(repack.repack(p, code, "1 vacuum pack, fridge").code)
    assert new is not None
    assert dict(new.process) == {"salt": "3.6%", "vacuum": "yes"}


# -- a process belongs to the jar that was processed -----------------------------------------------

BEANS = (
    "4 pint jars runner beans, pressure canned, larder, minutes=20, psi=11, canner=dial, "
    "altitude=500ft"
)
PICKLES = "4 pint jars dill pickles, vinegar pickle, larder, minutes=10, vinegar=5%"
JAM = "4 half-pint jars strawberry jam, jam, larder, minutes=10"


@pytest.mark.parametrize("opened", [False, True])
@pytest.mark.parametrize("into", ["1 box", "1 quart tub", "2 half-pint jars"])
@pytest.mark.parametrize("line", [BEANS, PICKLES, JAM])
def test_what_a_jar_is_filled_into_was_not_processed(
    p: Pantry, line: str, into: str, opened: bool
) -> None:
    code = up(p, line)
    wait(p, 1)
    tending.tend(p, code)
    wait(p, 10)
    if opened:
        act.open_(p, f"{code}/1")
    new = repack.repack(p, f"{code}/1", f"{into}, fridge")
    assert new.verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    again = repack.repack(p, new.code, "1 box, fridge", "all")
    assert again.verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    correct.correct(p, again.code, note="for lunch")
    assert row(p, again.code).verdict in (Verdict.SOUND, Verdict.EAT_SOON)


def test_what_stands_against_the_jar_stands_against_what_was_in_it(p: Pantry) -> None:
    code = up(p, BEANS)
    new = repack.repack(p, f"{code}/1", "1 box, fridge").code
    correct.correct(p, code, process=[("minutes", "15")])
    assert row(p, new).verdict is Verdict.DO_NOT_TASTE
    correct.correct(p, code, process=[("minutes", "25")])
    assert row(p, new).usable


def test_what_is_processed_anew_was_so_in_its_own_jars(p: Pantry) -> None:
    code = up(p, BEANS)
    line = "1 quart jar, pressure canned, fridge, minutes=20, psi=11, canner=dial, altitude=500ft"
    made = p.batch(repack.repack(p, f"{code}/1", line).code)
    assert made is not None
    assert any("25 minutes" in one for one in made.doubt)


# -- a part of a jar -------------------------------------------------------------------------------


@pytest.mark.parametrize("how", ["repack", "from", "use"])
@pytest.mark.parametrize(
    ("line", "of_it"),
    [(BEANS, "1 pot bean soup, cooked meal, fridge"), (JAM, "1 cake, cooked meal, fridge")],
)
def test_what_is_left_of_a_jar_that_was_opened_for_a_dish_stands_in_the_cold(
    p: Pantry, line: str, of_it: str, how: str
) -> None:
    code = up(p, line)
    wait(p, 1)
    tending.tend(p, code)
    if how == "use":
        said = [act.use(p, f"{code}/1", "half").message]
    elif how == "from":
        reading = putup.read(p, f"{of_it}, from half of {code}/1")
        said = list(putup.put_up(p, reading).cautions)
    else:
        said = list(repack.repack(p, f"{code}/1", of_it, "half").cautions)
    (rest,) = (one for one in view.due(p) if one.code == code and one.state is State.OPEN)
    assert (rest.place, rest.usable) == ("fridge", True)
    assert any("fridge" in one for one in said), said
    assert not any("is empty" in one for one in said)
    if how != "use":
        undo.undo(p)
        assert {one.place for one in view.due(p) if one.code == code} == {"larder"}


def test_of_what_is_dry_or_frozen_a_part_is_taken_where_it_stands(p: Pantry) -> None:
    peas = up(p, "2 2-lb bags peas, frozen, chest")
    made = repack.repack(p, peas, "1 pot pea soup, cooked meal, fridge", "1 lb")
    assert {one.place for one in view.due(p) if one.code == peas} == {"chest"}
    assert not any("is open now" in one for one in made.cautions)


# -- what a line of repack leaves out --------------------------------------------------------------


@pytest.mark.parametrize(
    ("line", "into", "food", "method"),
    [
        (JAM, "2 4-oz jars, jam, fridge", "strawberry jam", "jam"),
        (JAM, "2 4-oz jars jam, fridge", "strawberry jam", "jam"),
        (JAM, "2 4-oz jars, fridge", "strawberry jam", "jam"),
        (JAM, "2 4-oz jars plum jam, jam, fridge", "plum jam", "jam"),
        (PICKLES, "1 jar, pickles, fridge", "dill pickles", "vinegar pickle"),
        (
            "50 lb apples, cellar-stored, cellar",
            "4 pint jars, boiling-water canned, larder, minutes=25",
            "apples",
            "boiling-water canned",
        ),
    ],
)
def test_a_line_that_names_only_the_method_leaves_the_food_as_it_is(
    p: Pantry, line: str, into: str, food: str, method: str
) -> None:
    code = up(p, line)
    took = "5 lb" if food == "apples" else ""
    reading = repack.repack(p, f"{code}/1", into, took).reading
    assert (reading.food, reading.method) == (food, method)


def test_the_line_that_is_advised_is_whole(p: Pantry) -> None:
    code = up(p, "1 crock cabbage, lactic ferment, cellar, salt=2.25%")
    line = "4 pint jars, boiling-water canned, larder, minutes=25, altitude=500ft"
    with pytest.raises(Refused) as refused:
        repack.repack(p, code, line)
    assert f'`ready {code} --into "{line}"`' in refused.value.message


# -- what comes open -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "food", ["chorizo", "liver", "ham", "sausages", "corned beef", "pastrami", "smoked salmon"]
)
@pytest.mark.parametrize("days", [0, 9])
def test_what_is_put_up_open_ends_no_later_than_it_would_have_shut(
    p: Pantry, food: str, days: int
) -> None:
    made = f", {days} days ago" if days else ""
    shut = row(p, up(p, f"1 pack {food}, bought, fridge{made}"))
    begun = row(p, up(p, f"1 pack {food}, bought, fridge, state=open{made}"))
    assert begun.state is State.OPEN
    if shut.discard_after is not None:
        assert begun.discard_after is not None
        assert begun.discard_after <= shut.discard_after


def test_jam_in_another_jar_is_no_jam_that_was_made_anew(p: Pantry) -> None:
    """It goes on as open, with the days that it has, whatever way its name says."""
    line = "4 half-pint jars strawberry jam, boiling-water canned, larder, minutes=10, seal=tight"
    code = up(p, line)
    wait(p, 30)
    act.open_(p, f"{code}/1")
    (opened,) = (one for one in view.due(p) if one.code == code and one.state is State.OPEN)
    wait(p, 40)
    new = repack.repack(p, f"{code}/1", "1 4-oz jar strawberry jam, fridge").code
    assert row(p, new).state is State.OPEN
    assert row(p, new).best_by == opened.best_by


def test_a_cordial_that_is_filled_over_is_open(p: Pantry) -> None:
    """Candied fruit, sugar and honey go on as they were: nothing got in that was not there."""
    code = up(p, "2 bottles elderflower cordial, sugar preserve, fridge")
    with pytest.raises(Refused, match="Once opened it stays in the fridge"):
        repack.repack(p, f"{code}/1", "1 bottle, larder")
    new = repack.repack(p, f"{code}/1", "1 bottle, fridge").code
    assert row(p, new).discard_after == p.today + timedelta(days=3)
    honey = up(p, "2 jars honey, sugar preserve, larder")
    last = row(p, honey).best_by
    assert row(p, repack.repack(p, f"{honey}/1", "1 jar, larder").code).best_by == last


def test_dried_meat_that_is_opened_has_the_days_of_jerky(p: Pantry) -> None:
    """Two weeks out, counted from drying, opened or not; what is packed anew no longer."""
    code = up(p, "3 bags beef, dried, cellar")
    last = p.today + timedelta(days=14)
    wait(p, 4)
    act.open_(p, f"{code}/1")
    assert {one.discard_after for one in view.due(p) if one.code == code} == {last}
    assert row(p, repack.repack(p, f"{code}/1", "1 bag, cellar").code).discard_after == last
    assert row(p, repack.repack(p, f"{code}/2", "1 bag, cellar").code).discard_after == last


@pytest.mark.parametrize("food", ["trout, hot smoked", "salmon, cold smoked, salt=3.6%"])
def test_a_pack_without_air_that_comes_open_ends_no_later_than_it_would_have_shut(
    p: Pantry, food: str
) -> None:
    shut = row(p, up(p, f"1 pack {food}, vacuum=yes, fridge"))
    begun = row(p, up(p, f"1 pack {food}, vacuum=yes, state=open, fridge"))
    assert begun.state is State.OPEN
    assert begun.discard_after == shut.discard_after == p.today + timedelta(days=5)


def test_what_is_cured_at_home_is_not_offered_ready_or_not_and_says_why(p: Pantry) -> None:
    code = up(p, "2 lb bacon, salted, fridge")
    wait(p, 20)
    act.ready(p, code)
    with pytest.raises(Refused, match="thickness and its recipe"):
        act.use(p, code)
