"""A household's day through the services: put up, open, use, move, discard, undo."""

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import BadInput, PantryError, Refused, StoreError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week
from pantry_tui.services.stock import act, one_batch, places, undo, view
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    path = tmp_path / "store.db"
    create(path, people=4)
    with open_pantry(path, TODAY) as pantry:
        for name, climate in (
            ("shelf 1", "pantry"),
            ("shelf 2", "pantry"),
            ("kitchen", "room"),
            ("fridge", "fridge"),
            ("freezer", "freezer"),
        ):
            places.add(pantry, name, climate)
        yield pantry


def up(p: Pantry, food: str, method: str, place: str, count: int = 3, ago: int = 0) -> str:
    made = (p.today - timedelta(days=ago)).isoformat()
    reading = putup.from_flags(
        p, food=food, method=method, place=place, count=count, made=made, size="pint jars"
    )
    return putup.put_up(p, reading).code


def test_a_line_is_read_back_whole_and_books_the_batch(p: Pantry) -> None:
    reading = putup.read(p, "7 pint jars runner beans, pressure canned, shelf 2, yesterday")
    assert (reading.count, reading.food, reading.place) == (7, "runner beans", "shelf 2")
    assert reading.made == date(2026, 11, 24)
    assert reading.unread == ()
    assert reading.problems == ()
    done = putup.put_up(p, reading)
    assert done.best_by == date(2027, 11, 24)
    assert done.discard_after is None
    assert len(one_batch.show(p, done.code).rows[0].container_ids) == 7


def test_a_dry_run_books_nothing(p: Pantry) -> None:
    before = len(p.events)
    putup.preview(p, putup.read(p, "2 pint jars peaches, boiling-water canned, shelf 1"))
    assert len(p.events) == before


def test_use_takes_the_oldest_container_first_opened_before_sealed(p: Pantry) -> None:
    code = up(p, "runner beans", "pressure canned", "shelf 1")
    opened = act.open_(p, f"{code}/3")
    assert "fridge" in opened.message
    assert act.use(p, code).containers == (f"{code}/3",)
    assert act.use(p, code).containers == (f"{code}/1",)


def test_taking_a_younger_batch_says_where_the_older_one_stands(p: Pantry) -> None:
    old = up(p, "peaches", "boiling-water canned", "shelf 2", ago=100)
    young = up(p, "peaches", "boiling-water canned", "shelf 1", ago=10)
    warned = act.use(p, young).warnings
    assert any(old in one and "shelf 2" in one for one in warned)
    assert not any(young in one for one in act.use(p, old).warnings)
    assert not any(old in one for one in act.use(p, young, any_=True).warnings)


def test_a_younger_batch_with_the_earlier_date_goes_first_and_says_why(p: Pantry) -> None:
    old = up(p, "apples", "dried", "shelf 1", ago=20)
    young = up(p, "apples", "dried", "kitchen", ago=10)
    rows = [row.code for row in view.due(p)]
    assert rows.index(young) < rows.index(old)
    assert any("falls due first" in one for one in act.use(p, young).warnings)
    assert any(young in one for one in act.use(p, old).warnings)


def test_opening_runs_the_strict_clock_in_the_fridge(p: Pantry) -> None:
    code = up(p, "runner beans", "pressure canned", "shelf 1")
    act.open_(p, code)
    row = next(row for row in one_batch.show(p, code).rows if row.state is State.OPEN)
    assert row.place == "fridge"
    assert row.discard_after == date(2026, 11, 28)


def test_thawing_out_of_the_freezer_by_a_move_counts_as_thawed(p: Pantry) -> None:
    code = up(p, "ground beef", "frozen", "freezer", ago=30)
    act.move(p, f"{code}/1", "fridge")
    row = next(row for row in one_batch.show(p, code).rows if row.state is State.THAWED)
    assert row.discard_after == date(2026, 11, 26), "nobody says it was still frozen"


def test_what_may_not_stand_somewhere_is_refused_or_booked_and_judged(p: Pantry) -> None:
    with pytest.raises(Refused):
        up(p, "garlic", "in oil", "shelf 1")
    with pytest.raises(Refused):
        up(p, "runner beans", "boiling-water canned", "shelf 1")
    code = up(p, "garlic", "in oil", "fridge")
    warned = act.move(p, code, "kitchen").warnings
    assert any("may not stay in kitchen" in one for one in warned)
    p.today += timedelta(days=1)
    assert view.due(p)[0].verdict is Verdict.DISCARD, "it did stand there"
    act.move(p, code, "fridge")
    assert view.due(p)[0].verdict is Verdict.DISCARD, "back in the cold it stays so"


def test_unfit_food_is_never_used_or_given_only_discarded(p: Pantry) -> None:
    code = up(p, "garlic", "in oil", "fridge", ago=9)
    assert view.due(p)[0].verdict is Verdict.DISCARD
    with pytest.raises(Refused):
        act.use(p, code)
    with pytest.raises(Refused):
        act.give(p, code)
    with pytest.raises(BadInput):
        act.discard(p, code)
    assert "Discarded" in act.discard(p, code, why="past its date").message


def test_past_its_date_is_questioned_where_no_date_is_past(p: Pantry) -> None:
    code = up(p, "peaches", "boiling-water canned", "shelf 1")
    told = act.discard(p, code, why="past its date")
    assert "Discarded" in told.message
    assert any("not past its date" in one and "`undo`" in one for one in told.warnings)
    assert not act.discard(p, code, why="nobody would eat it").warnings
    p.today += timedelta(days=500)
    assert not act.discard(p, code, why="past its date").warnings


def test_undo_takes_back_one_thing_at_a_time_and_appends(p: Pantry) -> None:
    code = up(p, "peaches", "boiling-water canned", "shelf 1")
    before = p.stock.all()
    lines = len(p.events)
    act.use(p, code)
    undo.undo(p)
    assert p.stock.all() == before
    assert len(p.events) == lines + 2
    undo.undo(p)
    with pytest.raises(BadInput):
        one_batch.show(p, code)
    fresh = up(p, "peaches", "boiling-water canned", "shelf 1")
    assert fresh != code, "a code on a lid is never given again"


def test_stock_is_the_fold_of_the_log(p: Pantry) -> None:
    code = up(p, "carrots", "pressure canned", "shelf 1", count=4)
    act.open_(p, code)
    act.give(p, code, 1, "Aunt Sunniva")
    with open_pantry(p.path, TODAY) as again:
        assert again.stock.all() == p.stock.all()


def test_bulk_is_drawn_by_weight(p: Pantry) -> None:
    reading = putup.from_flags(
        p, food="carrots", method="cellar-stored", place="fridge", process={"amount": "30 lb"}
    )
    code = putup.put_up(p, reading).code
    assert "24 lb left" in act.use(p, code, "6 lb").message
    with pytest.raises(PantryError):
        act.use(p, code, "40 lb")


def test_an_unknown_food_asks_for_group_and_acidity(p: Pantry) -> None:
    reading = putup.from_flags(p, food="elder shoots", method="in oil", place="fridge")
    assert any("group=" in one for one in reading.problems)
    told = putup.from_flags(
        p, food="elder shoots", method="in oil", place="fridge", group="herb", acidity="low-acid"
    )
    assert putup.put_up(p, told).discard_after == TODAY + timedelta(days=2)


def test_the_week_offers_opened_first_and_never_what_is_unfit(p: Pantry) -> None:
    bad = up(p, "garlic", "in oil", "fridge", ago=9)
    good = up(p, "peaches", "boiling-water canned", "shelf 1", ago=300)
    opened = up(p, "runner beans", "pressure canned", "shelf 1", ago=30)
    act.open_(p, opened)
    seen = week.week(p)
    codes = [take.code for take in seen.take]
    assert good in codes
    assert opened in codes
    assert bad not in codes
    assert [row.code for row in seen.discard] == [bad]
    first = next(take for take in seen.take if take.code == opened)
    assert first.day <= TODAY + timedelta(days=3)


@pytest.mark.parametrize(
    "name",
    ["beans [/x]", "box [A]", "\x1b[31mred", "🫙 jar", "مرحبا", "x" * 500, "a\nb\tc"],
)
def test_hostile_names_stay_literal(p: Pantry, name: str) -> None:
    reading = putup.from_flags(
        p,
        food=name,
        method="dried",
        place="shelf 1",
        group="vegetable",
        acidity="low-acid",
        note=name,
    )
    code = putup.put_up(p, reading).code
    assert one_batch.show(p, code).food == " ".join(name.lower().split())
    assert any(row.code == code for row in view.find(p, code))


@pytest.mark.parametrize("content", [b"", b"not a store", b"SQLite format 3\x00" + b"\0" * 100])
def test_a_foreign_or_broken_file_is_refused_and_untouched(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "other.db"
    path.write_bytes(content)
    with pytest.raises(StoreError):
        open_pantry(path, TODAY)
    assert path.read_bytes() == content


def test_a_store_of_a_newer_version_is_refused(tmp_path: Path) -> None:
    import sqlite3

    path = tmp_path / "store.db"
    create(path)
    with sqlite3.connect(path) as db:
        db.execute("PRAGMA user_version = 999")
    db.close()
    with pytest.raises(StoreError, match="newer"):
        open_pantry(path, TODAY)


def test_init_never_overwrites(tmp_path: Path) -> None:
    path = tmp_path / "store.db"
    create(path)
    with pytest.raises(Refused):
        create(path)


@pytest.mark.parametrize("amount", ["30", "banana", "0 lb", "-3lb", "5 pecks"])
def test_an_amount_that_cannot_be_drawn_from_is_named(p: Pantry, amount: str) -> None:
    reading = putup.from_flags(
        p, food="carrots", method="cellar-stored", place="fridge", process={"amount": amount}
    )
    with pytest.raises(BadInput):
        putup.put_up(p, reading)


def test_a_crate_put_up_by_weight_is_drawn_from_by_weight(p: Pantry) -> None:
    line = "20 lb carrots, cellar-stored, fridge"
    code = putup.put_up(p, putup.read(p, line)).code
    assert "18 lb" in act.use(p, code, "2 lb").message


def test_nothing_happens_to_what_was_not_put_up_yet(p: Pantry) -> None:
    code = up(p, "peaches", "boiling-water canned", "shelf 1", ago=10)
    early, same = (
        At(TODAY - timedelta(days=days), minute) for days, minute in ((11, None), (10, 0))
    )
    before = len(p.events)
    refused: tuple[Callable[[], object], ...] = (
        lambda: act.use(p, code, at=early),
        lambda: act.open_(p, code, at=early),
        lambda: act.move(p, code, "shelf 2", at=early),
        lambda: act.discard(p, code, why="other", at=early),
        lambda: act.give(p, code, at=early),
    )
    for do in refused:
        with pytest.raises(Refused, match="was put up on Sun 15 Nov 2026"):
            do()
    assert len(p.events) == before
    act.use(p, code, at=same)


def test_of_what_nobody_knows_the_day_it_was_made_an_earlier_act_is_told(p: Pantry) -> None:
    reading = putup.read(p, "2 pint jars pears, boiling-water canned, shelf 1, made unknown")
    code = putup.put_up(p, reading).code
    act.use(p, code, any_=True, at=At(TODAY - timedelta(days=3)))
