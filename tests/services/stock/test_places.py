"""Places that are renamed, joined and removed, and how much they hold."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, time, timedelta

import pytest

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.model import Held
from pantry_tui.core.words import Climate, Verdict
from pantry_tui.errors import BadInput, Refused, Unclear
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import act, one_batch, outage, places, readings, undo, view
from pantry_tui.services.stock.moving import move
from pantry_tui.services.stock.places_ever import begins_with, place_ever, said_otherwise
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.seen import At
from pantry_tui.store import places as place_rows


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    for name, climate in (("shelf two", "pantry"), ("chest", "freezer"), ("garage", "freezer")):
        places.add(larder, name, climate)
    return larder


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def newest_id(p: Pantry) -> str:
    event = undo.newest(p)
    assert event is not None
    return event.id


def test_two_places_become_one_and_one_undo_parts_them(p: Pantry) -> None:
    code = up(p, "3 pint jars peaches, boiling-water canned, larder, minutes=30")
    told = places.merge(p, "larder", "shelf two")
    assert "3 containers went to shelf two" in told.message
    assert [row.place for row in view.due(p)] == ["shelf two"]
    with pytest.raises(BadInput):
        p.find_place("larder")
    assert "removed the place larder" in undo.undo(p).message
    assert [row.place for row in view.due(p)] == ["larder"]
    assert p.find_place("larder").climate == "pantry"
    assert code == view.due(p)[0].code


def test_what_stood_in_a_place_that_is_no_more_has_lived_there_all_the_same(p: Pantry) -> None:
    code = up(p, "3 1 lb packs ground beef, frozen, garage")
    p.today += timedelta(days=20)
    before = next(row for row in view.due(p) if row.code == code)
    places.merge(p, "garage", "chest")
    after = next(row for row in view.due(p) if row.code == code)
    assert (after.verdict, after.best_by) == (before.verdict, before.best_by)
    assert after.place == "chest"
    assert any("freezer" in step for _, steps in one_batch.show(p, code).chain for step in steps)


def test_a_freezer_that_is_merged_into_a_larder_thaws_what_is_in_it(p: Pantry) -> None:
    up(p, "1 1 lb pack ground beef, frozen, garage")
    told = places.remove(p, "garage", "larder")
    assert any("may not st" in one for one in told.warnings), told
    p.today += timedelta(days=1)
    assert view.due(p)[0].verdict is Verdict.DISCARD


def test_a_place_with_something_in_it_is_not_removed(p: Pantry) -> None:
    up(p, "3 pint jars peaches, boiling-water canned, larder, minutes=30")
    with pytest.raises(Refused, match="--to"):
        places.remove(p, "larder")
    places.add(p, "top shelf", "pantry", "shelf two")
    with pytest.raises(Refused, match="top shelf"):
        places.remove(p, "shelf two")
    with pytest.raises(BadInput):
        places.merge(p, "larder", "larder")
    places.remove(p, "top shelf")
    places.remove(p, "shelf two")
    assert "shelf two" not in p.place_paths().values()


def test_a_new_name_that_is_taken_is_refused(p: Pantry) -> None:
    places.change(p, "larder", name="pantry wall")
    assert p.find_place("pantry wall").name == "pantry wall"
    with pytest.raises(Refused, match="merge"):
        places.change(p, "shelf two", name="Pantry Wall")


def test_a_place_that_is_overfull_says_so(p: Pantry) -> None:
    places.change(p, "larder", capacity=4)
    line = "3 pint jars peaches, boiling-water canned, larder, minutes=30"
    assert not any("room for" in one for one in putup.put_up(p, putup.read(p, line)).cautions)
    made = putup.put_up(p, putup.read(p, line))
    assert "larder holds 6, which is more than its room for 4." in made.cautions
    other = up(p, "2 pint jars plums, boiling-water canned, shelf two")
    assert any("larder holds 8" in one for one in act.move(p, other, "larder").warnings)
    assert any("larder holds 8" in one for one in places.change(p, "larder", capacity=5).warnings)


def test_what_is_remembered_of_a_place_that_is_gone_still_counts(p: Pantry) -> None:
    """A power cut and a reading are booked for it by its name, and strike what stood there then."""
    places.add(p, "old fridge", "fridge")
    places.add(p, "new fridge", "fridge")
    code = up(p, "6 pint jars stew, cooked meal, old fridge")
    that_day = p.today + timedelta(days=1)
    p.today += timedelta(days=2)
    places.merge(p, "old fridge", "new fridge")
    assert found(p, code).usable
    readings.read(p, "old fridge", 60.0, at=At(that_day, 720))
    assert found(p, code).verdict in UNFIT
    undo.undo(p)
    start = datetime.combine(that_day, time(9)).astimezone()
    gone = place_ever(p, "old fridge", begins_with(p, start))
    cut = outage.cut_of(p, gone, start, start + timedelta(hours=14), max_temp_f=60.0)
    assert "6 discard" in outage.book(p, gone, cut).message
    assert found(p, code).verdict in UNFIT
    with pytest.raises(BadInput):
        place_ever(p, "no such place", begins_with(p, None))


def test_what_came_with_a_merged_place_is_asked_about_and_never_promised(p: Pantry) -> None:
    """Its stock stood elsewhere while the place it came into had no power."""
    minced = up(p, "3 packs ground beef, frozen, chest")
    peas = up(p, "3 packs peas, frozen, garage")
    p.today += timedelta(days=3)
    places.merge(p, "chest", "garage")
    end = datetime.combine(p.today, time(9)) - timedelta(days=1)
    garage = p.find_place("garage")
    cut = outage.cut_of(p, garage, end - timedelta(hours=20), end)
    rows = {row.code: row for row in outage.judge_all(p, garage, cut)}
    assert rows[peas].action == "keep"
    assert (rows[minced].verdict, rows[minced].action) == (Verdict.UNKNOWN, "ask about")
    assert "book that for chest too" in rows[minced].reasons[0]
    assert "3 ask about" in outage.book(p, garage, cut).message
    chest = place_ever(p, "chest", begins_with(p, cut_start := end - timedelta(hours=30)))
    longer = outage.cut_of(p, chest, cut_start, end)
    assert "3 discard" in outage.book(p, chest, longer).message
    assert found(p, minced).verdict in UNFIT
    again = {row.code: row for row in outage.judged_before(p, p.places[garage.id], cut)}
    assert minced not in again or again[minced].action == "discard"


@pytest.mark.parametrize("booked", ["reading", "cut"])
def test_what_is_said_of_a_place_reaches_what_stood_in_a_basket_in_it(
    p: Pantry, booked: str
) -> None:
    """The basket is gone; its food was as warm as the chest around it all the same."""
    places.add(p, "basket", "freezer", "chest")
    code = up(p, "3 packs ground beef, frozen, basket")
    that_day = p.today + timedelta(days=1)
    p.today += timedelta(days=3)
    places.merge(p, "basket", "garage")
    before = found(p, code)
    assert before.usable
    if booked == "reading":
        readings.read(p, "chest", 60.0, at=At(that_day, 720), since=300)
    else:
        chest, start = p.find_place("chest"), datetime.combine(that_day, time(9)).astimezone()
        cut = outage.cut_of(p, chest, start, start + timedelta(hours=30), full=False)
        assert "3 discard" in outage.book(p, chest, cut).message
    assert found(p, code).verdict in UNFIT
    assert verify(p.path, p.today).ok
    undo.undo(p)
    assert found(p, code) == before
    assert verify(p.path, p.today).ok


def test_a_name_that_a_new_place_took_is_asked_about(p: Pantry) -> None:
    code = up(p, "3 packs ground beef, frozen, chest")
    made, gone = p.today, p.today + timedelta(days=5)
    p.today = gone
    places.merge(p, "chest", "garage")
    p.today += timedelta(days=2)
    places.add(p, "chest", "freezer")
    added = p.today
    early = At(made + timedelta(days=2), 600)
    with pytest.raises(Unclear) as asked:
        readings.read_typed(p, "chest", "55F", at=early)
    old, new = asked.value.choices
    assert (old, new) == (f"chest until {gone}", f"chest since {added}")
    readings.read_typed(p, new, "55F", at=early)
    assert found(p, code).usable, "it never stood in the new one"
    readings.read_typed(p, old, "55F", at=early)
    assert found(p, code).verdict in UNFIT
    assert "(gone since)" in str(one_batch.show(p, code).chain)
    readings.read_typed(p, "chest", "0F")
    assert p.find_place("chest").temperature_f == 0, "what happens now is of the one there is"
    with pytest.raises(BadInput, match="leave that out"):
        place_ever(p, f"chest until {added}", begins_with(p, None))
    with pytest.raises(Unclear):
        place_ever(p, "chest", begins_with(p, None))


def test_of_two_that_are_gone_it_is_asked_which(p: Pantry) -> None:
    for _ in range(2):
        p.today += timedelta(days=1)
        places.remove(p, "chest")
        p.today += timedelta(days=1)
        places.add(p, "chest", "freezer")
    p.today += timedelta(days=1)
    places.remove(p, "chest")
    with pytest.raises(Unclear) as asked:
        place_ever(p, "chest", begins_with(p, None))
    assert len(set(asked.value.choices)) == 3
    each = {place_ever(p, one, begins_with(p, None)).id for one in asked.value.choices}
    assert len(each) == 3


def found(p: Pantry, code: str) -> DueRow:
    return next(row for row in view.due(p) if row.code == code)


def test_a_renaming_is_not_taken_back_where_another_place_has_the_name_by_now(p: Pantry) -> None:
    places.change(p, "garage", name="shed")
    renamed = newest_id(p)
    places.add(p, "garage", "freezer")
    with pytest.raises(Refused, match="Another place is called 'garage'"):
        undo.undo(p, renamed)
    assert {"shed", "garage"} <= {one.name for one in p.places.values()}
    places.change(p, "garage", name="porch")
    undo.undo(p, renamed)
    assert sorted(one.name for one in p.places.values()).count("garage") == 1


def test_a_removal_is_not_taken_back_where_another_place_has_the_name_by_now(p: Pantry) -> None:
    places.remove(p, "garage")
    removed = newest_id(p)
    places.add(p, "garage", "pantry")
    with pytest.raises(Refused, match="Another place is called 'garage'"):
        undo.undo(p, removed)
    assert p.find_place("garage").climate == "pantry"


def test_a_move_out_of_a_place_that_is_no_more_is_not_taken_back(p: Pantry) -> None:
    code = up(p, "1 1 lb pack ground beef, frozen, garage")
    move(p, code, "chest")
    moved = newest_id(p)
    places.remove(p, "garage")
    with pytest.raises(Refused, match=f"{code}/1 would stand in garage, which is no more"):
        undo.undo(p, moved)
    assert [row.place for row in view.due(p)] == ["chest"]
    undo.undo(p)
    undo.undo(p, moved)
    assert [row.place for row in view.due(p)] == ["garage"]


# -- a place in a line ----------------------------------------------------------------------------


@pytest.mark.parametrize("line", ["top shelf, in larder", "top shelf, in larder, 55F, room for 9"])
def test_a_shelf_has_the_climate_of_the_place_it_is_in(p: Pantry, line: str) -> None:
    places.add_line(p, line)
    assert p.find_place("larder top shelf").climate is p.find_place("larder").climate


def test_a_room_that_is_not_there_yet_is_made_with_its_first_shelf_in_one_undo(p: Pantry) -> None:
    """The example of the question, on the first evening."""
    done = places.add_line(p, "shelf 3, pantry, in outhouse, 55F")
    assert "outhouse is new too" in done.message
    assert p.find_place("outhouse shelf 3").target_f == 55
    undo.undo(p)
    for gone in ("outhouse", "shelf 3"):
        with pytest.raises(BadInput, match="no place called"):
            p.find_place(gone)


@pytest.mark.parametrize(
    "line", ["shelf 3, pantry, in lardre", "big freezer, in barn", "box, freezer, in barn"]
)
def test_a_room_misspelt_or_of_unknown_climate_is_not_made(p: Pantry, line: str) -> None:
    before = dict(p.places)
    with pytest.raises(BadInput, match="no place called"):
        places.add_line(p, line)
    assert dict(p.places) == before


@pytest.mark.parametrize("line", ["attic", "attic, 50F", "attic, room for 40"])
def test_a_place_without_its_climate_is_told_where_to_write_it(p: Pantry, line: str) -> None:
    """A temperature behind the name is no climate that was misspelt."""
    with pytest.raises(BadInput, match=r"climate behind the name, .*: attic, room"):
        places.add_line(p, line)
    places.add_line(p, "attic, room, 50F")
    assert p.find_place("attic").target_f == 50


@pytest.mark.parametrize(
    ("line", "climate", "target"),
    [
        ("root cellar, 45F", Climate.CELLAR, 45),
        ("Cellar", Climate.CELLAR, None),
        ("back pantry, pantry, 62F", Climate.PANTRY, 62),
        ("deep freezer, -10F", Climate.FREEZER, -10),
        ("scullery, room for 40", Climate.PANTRY, None),
    ],
)
def test_what_is_called_as_its_climate_is_needs_no_other_word(
    p: Pantry, line: str, climate: Climate, target: float | None
) -> None:
    assert f"({climate})" in places.add_line(p, line).message
    place = p.find_place(line.split(",")[0])
    assert (place.climate, place.target_f) == (climate, target)


@pytest.mark.parametrize("line", ["garage, 45F", "basement", "shed, 50F", "shelf 9, 45F", "north"])
def test_what_may_be_any_says_its_climate(p: Pantry, line: str) -> None:
    """How warm these are differs from house to house."""
    with pytest.raises(BadInput, match="climate behind the name"):
        places.add_line(p, line)


def test_a_place_is_found_by_the_name_that_it_had_and_said_to_be_which(p: Pantry) -> None:
    """Who books a power cut late types the name that the freezer had then."""
    code = up(p, "3 packs ground beef, frozen, chest")
    p.today += timedelta(days=3)
    places.change(p, "chest", name="blue freezer")
    end = datetime.combine(p.today, time(9)) - timedelta(days=1)
    start = end - timedelta(hours=60)
    blue = place_ever(p, "Chest", begins_with(p, start))
    assert blue.id == p.find_place("blue freezer").id
    assert "blue freezer" in said_otherwise(p, blue, "Chest")
    assert said_otherwise(p, blue, "blue freezer") == said_otherwise(p, blue, "freezer") == ""
    message = outage.book(p, blue, outage.cut_of(p, blue, start, end)).message
    assert "blue freezer" in message
    assert found(p, code).verdict in UNFIT
    said = readings.read(p, "chest", 20.0, at=At(p.today - timedelta(days=2), 720)).message
    assert "blue freezer" in said


def test_a_name_that_another_place_took_is_asked_about(p: Pantry) -> None:
    p.today += timedelta(days=3)
    renamed = p.today.isoformat()
    places.change(p, "chest", name="blue freezer")
    places.change(p, "garage", name="chest")
    chest, garage = p.find_place("blue freezer"), p.find_place("chest")
    before = datetime.combine(p.today, time(9)) - timedelta(days=1)
    with pytest.raises(Unclear) as asked:
        place_ever(p, "chest", begins_with(p, before))
    assert asked.value.choices == (f"chest until {renamed}", f"chest since {renamed}")
    assert "called blue freezer since" in asked.value.message
    for typed, meant in zip(asked.value.choices, (chest, garage), strict=True):
        assert place_ever(p, typed, begins_with(p, before)).id == meant.id
    p.today += timedelta(days=1)
    assert place_ever(p, "chest", begins_with(p, datetime.combine(p.today, time(9)))) == garage


def test_a_renamed_place_took_its_name_back_and_is_not_asked_about(p: Pantry) -> None:
    places.change(p, "chest", name="blue freezer")
    places.change(p, "blue freezer", name="chest")
    chest = p.find_place("chest")
    assert place_ever(p, "chest", begins_with(p, None)) == chest
    assert place_ever(p, "blue freezer", begins_with(p, None)) == chest


@pytest.mark.parametrize("minutes", [(600, 640), (600, 600)])
def test_two_that_gave_a_name_up_on_one_day_are_told_apart(
    p: Pantry, minutes: tuple[int, int]
) -> None:
    """A cut of the first one strikes what stood there, whichever of them is asked about first."""
    code = up(p, "3 packs ground beef, frozen, chest")
    p.today += timedelta(days=3)
    move(p, code, "garage")
    p.today += timedelta(days=2)
    gone = p.today
    first, ids = p.find_place("chest"), list[str]()
    for n, minute in enumerate(minutes):
        p.clock = Clock(gone, minute)
        ids.append(p.find_place("chest").id)
        places.remove(p, "chest")
        if n == 0:
            places.add(p, "chest", "freezer")
    start = datetime.combine(gone - timedelta(days=4), time(9))
    with pytest.raises(Unclear) as asked:
        place_ever(p, "chest", begins_with(p, start))
    assert len(set(asked.value.choices)) == 2
    assert [place_ever(p, one, 0).id for one in asked.value.choices] == ids
    with pytest.raises(Unclear) as again:
        place_ever(p, f"chest until {gone}", begins_with(p, start))
    assert again.value.choices == asked.value.choices
    outage.book(p, first, outage.cut_of(p, first, start, start + timedelta(hours=40)))
    assert found(p, code).verdict in UNFIT


def test_a_shelf_of_which_nothing_was_said_is_as_warm_as_its_room(p: Pantry) -> None:
    places.add(p, "store room", "pantry", temp_f=68)
    places.add(p, "upper", "pantry", "store room")
    places.add(p, "told", "pantry", "store room", temp_f=60)
    line = "2 bags apples, dried, {}, 2026-11-25"
    codes = [up(p, line.format(one)) for one in ("store room", "upper", "told")]

    def best() -> list[object]:
        return [one_batch.show(p, code).rows[0].best_by for code in codes]

    def shown() -> dict[str, float]:
        return {one.path.rpartition("› ")[2]: one.temperature_f for one in view.shelves(p)}

    in_room, on_shelf, on_told = best()
    assert in_room == on_shelf != on_told
    assert shown()["upper"] == 68
    assert shown()["told"] == 60
    places.change(p, "store room", temp_f=85)
    warmer = best()
    assert warmer[0] == warmer[1] != on_shelf, "it follows what is said of the room later"
    assert warmer[2] == on_told
    assert shown()["upper"] == 85
    places.change(p, "store room", temp_f=58)
    assert [shown()[one] for one in ("upper", "told")] == [58, 60]
    places.change(p, "store room", temp_f=85)
    assert "85 F" in places.change(p, "upper", climate="pantry").message
    assert verify(p.path, p.today).ok


def test_a_row_of_a_place_that_says_not_what_was_told_is_made_again(p: Pantry) -> None:
    """What an older program kept is read as never told where it is what is assumed; with the rules
    of another one the places are made from the log again."""
    places.add(p, "told", "pantry", temp_f=60)
    db, id_ = p.store.db, p.find_place("told").id

    def told(of: Pantry) -> list[bool]:
        return [one.told for one in of.places[id_].facts if isinstance(one, Held)]

    assert told(p) == [True]
    (held,) = [one for one in p.places[id_].facts if isinstance(one, Held)]
    older = replace(p.places[id_], facts=(held._replace(told=False),))
    with p.writing():
        place_rows.save(db, id_, older)
        p.store.set_meta("rules", "another")
    with open_pantry(p.path, p.today) as later:
        assert told(later) == [False]
        assert verify(later.path, later.today).ok, "it is of another program, not hurt"
        ready(later)
        assert told(later) == [True]
        assert verify(later.path, later.today).ok


def test_the_climate_of_a_place_in_another_need_not_be_said(p: Pantry) -> None:
    assert "(freezer)" in places.add(p, "drawer", "", "chest").message
    assert "(pantry)" in places.add(p, "top shelf", "", "shelf two").message
    assert "(freezer)" in places.add(p, "small freezer", "", "shelf two").message
    with pytest.raises(BadInput, match="Say what climate"):
        places.add(p, "attic", "")


def test_a_box_in_a_refrigerator_that_is_given_up_is_no_refrigerator(p: Pantry) -> None:
    places.add(p, "box", "", "fridge")
    places.add(p, "ice box", "freezer", "fridge")
    code = up(p, "1 box stew, cooked meal, box")
    told = places.change(p, "fridge", climate="room").message
    assert told.endswith("So is box in it.")
    assert [p.find_place(one).climate for one in ("box", "ice box")] == ["room", "freezer"]
    p.today += timedelta(days=1)
    assert view.due(p)[0].verdict is Verdict.DISCARD
    undo.undo(p)
    assert p.find_place("box").climate == p.find_place("fridge").climate == "fridge"
    assert next(row for row in view.due(p) if row.code == code).verdict is not Verdict.DISCARD


@pytest.mark.parametrize("set_to", [None, 30, 40, 55])
def test_a_basket_in_a_chest_that_becomes_a_cellar_is_one_however_it_is_set(
    p: Pantry, set_to: float | None
) -> None:
    places.add(p, "basket", "", "chest", set_to)
    code = up(p, "2 half-pint jars strawberries, freezer jam, basket")
    places.change(p, "chest", climate="cellar")
    assert p.find_place("basket").climate == "cellar"
    p.today += timedelta(days=1)
    (row,) = (row for row in view.due(p) if row.code == code)
    assert not row.usable


def test_a_basket_follows_a_chest_of_which_two_things_were_said_in_one_minute(p: Pantry) -> None:
    places.add(p, "basket", "", "chest")
    code = up(p, "2 packs ground beef, frozen, basket")
    places.change(p, "chest", climate="pantry")
    places.change(p, "chest", temp_f=32)
    p.today += timedelta(days=1)
    (row,) = (row for row in view.due(p) if row.code == code)
    assert (row.verdict, row.usable) == (Verdict.DISCARD, False)
