"""What is recalled with a batch: its kin by descent, and by what a note alone says is in it."""

from __future__ import annotations

from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup.recall import recall
from pantry_tui.services.pantry import Pantry


def _put_up(p: Pantry, line: str, note: str = "") -> str:
    return putup.put_up(p, putup.read(p, line, note=note)).code


def _codes(p: Pantry, code: str) -> set[str]:
    return {row.container.partition("/")[0] for row in recall(p, code)}


def test_what_a_note_has_in_it_is_recalled_both_ways(larder: Pantry) -> None:
    oil = _put_up(larder, "1 jar garlic in oil, in oil, fridge")
    stew = _put_up(larder, "2 boxes beef stew, cooked meal, fridge", f"fried in {oil}")
    soup = _put_up(larder, "2 boxes pea soup, cooked meal, fridge", f"stretched with {stew}")
    other = _put_up(larder, "2 boxes rice, cooked meal, fridge", f"same shelf as {oil}")
    assert _codes(larder, oil) == _codes(larder, stew) == _codes(larder, soup) == {oil, stew, soup}
    assert _codes(larder, other) == {other}


def test_a_note_that_is_put_right_links_nothing(larder: Pantry) -> None:
    oil = _put_up(larder, "1 jar garlic in oil, in oil, fridge")
    stew = _put_up(larder, "2 boxes beef stew, cooked meal, fridge", f"not fried in {oil}")
    assert _codes(larder, oil) == {oil}
    assert _codes(larder, stew) == {stew}
