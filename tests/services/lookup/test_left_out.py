"""Time out of the cold is no sign: the answer says that the move is to be booked."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.out_of_the_cold import says_left_out
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act


@pytest.mark.parametrize(
    "text",
    ["left out overnight", "left on the counter for 5 hours", "out of the fridge", "unchilled",
     "not refrigerated", "stood in the car", "sat at room temperature", "forgotten in the boot"],
)  # fmt: skip
def test_words_for_it_are_known(text: str) -> None:
    assert says_left_out(text)


@pytest.mark.parametrize(
    "text", ["mould", "leaking", "sour smell", "bulging lid", "worn out label", "left half full"]
)
def test_signs_are_none(text: str) -> None:
    assert not says_left_out(text)


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def test_it_points_to_the_move_and_keeps_the_strict_verdict(larder: Pantry) -> None:
    stew = up(larder, "1 pot stew, cooked meal, fridge")
    for found in (signs.weigh(larder, stew, "left out overnight"),
                  signs.mark(larder, stew, "left out overnight")):  # fmt: skip
        assert found.verdict is Verdict.DO_NOT_TASTE
        assert f"`pantry-tui move {stew}/1 PLACE --at" in found.do[-1]
    other = up(larder, "1 pot stew, cooked meal, fridge")
    with pytest.raises(BadInput, match=rf"is no sign\. .*move {other}/1 PLACE .*discard"):
        signs.mark(larder, other, "left on the counter for 5 hours")


def test_what_does_not_stand_in_the_cold_has_no_move_to_book(larder: Pantry) -> None:
    jar = up(larder, "2 pint jars peaches, boiling-water canned, larder, minutes=30")
    found = signs.weigh(larder, jar, "left out overnight")
    assert not any("move" in step for step in found.do)
    act.move(larder, f"{jar}/1", "fridge")
    found = signs.weigh(larder, f"{jar}/1", "left out overnight")
    assert any("move" in step for step in found.do)
