"""A gift that stands there again was somewhere that nobody knows."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, count, places, undo, view
from pantry_tui.services.stock.rows import DueRow


def found_again(p: Pantry, line: str, place: str) -> list[DueRow]:
    """Of two one is given away, and two are counted there."""
    code = putup.put_up(p, putup.read(p, line)).code
    act.give(p, code, 1, "Ada")
    where = p.find_place(place)
    count.from_counts(p, where, {code: 2})
    count.finish(p, where)
    return [row for row in view.due(p) if row.code == code]


def test_what_only_the_cold_keeps_is_unknown_and_not_offered(larder: Pantry) -> None:
    places.add(larder, "chest", "freezer")
    rows = found_again(larder, "2 1 lb packs ground beef, frozen, chest", "chest")
    by_verdict = {row.verdict: row for row in rows}
    assert set(by_verdict) == {Verdict.SOUND, Verdict.UNKNOWN}
    back = by_verdict[Verdict.UNKNOWN]
    assert (back.count, back.usable) == (1, False)
    assert back.reasons[0].startswith("Given away and found again")


def test_more_than_was_given_away_was_overlooked(larder: Pantry) -> None:
    places.add(larder, "chest", "freezer")
    line = "2 1 lb packs ground beef, frozen, chest"
    code = putup.put_up(larder, putup.read(larder, line)).code
    where = larder.find_place("chest")
    count.from_counts(larder, where, {code: 3})
    count.finish(larder, where)
    (row,) = view.due(larder)
    assert (row.count, row.verdict) == (3, Verdict.SOUND)
    undo.undo(larder)
    act.give(larder, code, 1, "Ada")
    count.from_counts(larder, where, {code: 4})
    count.finish(larder, where)
    assert {row.verdict: row.count for row in view.due(larder)} == {
        Verdict.SOUND: 3, Verdict.UNKNOWN: 1
    }  # fmt: skip


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("2 pint jars peaches, boiling-water canned, larder, minutes=30", "larder"),
        ("2 jars onions, dried, larder", "larder"),
        ("2 lb onions, fresh, larder", "larder"),
    ],
)
def test_what_stands_on_any_shelf_comes_back_as_it_was(
    larder: Pantry, line: str, place: str
) -> None:
    if "lb" in line:
        line = line.replace("2 lb", "2 1-lb bags")
    (row,) = found_again(larder, line, place)
    assert row.verdict is not Verdict.UNKNOWN or row.usable
    assert not any("Given away" in one for one in row.reasons)
