"""What one bad jar says of the jars that were put up with it."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.signs import Seal, Sign, SignVerdict
from pantry_tui.core.safety.sisters import PILED, Found, Sisters, of_pile, of_sisters
from pantry_tui.core.words import Method, Trust, Verdict

SEALED = Found(None, 3, False)
PIECE = Found(None, None, True)


def sign(
    verdict: SignVerdict = SignVerdict.DO_NOT_TASTE,
    words: str = "swollen lid",
    *,
    suspect: bool = True,
) -> Sign:
    return Sign(
        "s", (Method.PRESSURE,), ("*",), Seal.ANY, words, "", verdict, (), "bag", suspect, "", "",
        Trust.READ,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("found", "told"),
    [
        (SEALED, Sisters.SUSPECT),
        (Found(None, None, False), Sisters.SUSPECT),
        # Opened for less than its opened life, or just as long: it may have come with the jar.
        (Found(0, 3, False), Sisters.SUSPECT),
        (Found(3, 3, False), Sisters.SUSPECT),
        # Longer than it keeps once opened: it went bad by itself.
        (Found(4, 3, False), Sisters.LOOK_OVER),
        # Nobody knows how long an opened one keeps.
        (Found(90, None, False), Sisters.SUSPECT),
        (Found(90, 0, False), Sisters.LOOK_OVER),
    ],
)
def test_what_is_in_one_jar_may_be_in_all_of_them(found: Found, told: Sisters) -> None:
    assert of_sisters(sign(), found) is told
    assert of_sisters(sign(SignVerdict.COOK_FIRST), found) is told
    assert of_sisters(sign(suspect=False), found) is Sisters.NOTHING


def test_a_lid_that_never_sealed_is_a_reason_to_test_the_others() -> None:
    unsealed = sign(SignVerdict.USE_NOW, "unsealed within a day of canning")
    for found in (SEALED, Found(1, 3, False), PIECE):
        assert of_sisters(unsealed, found) is Sisters.TEST
    later = sign(SignVerdict.DO_NOT_TASTE, "unsealed later")
    assert of_sisters(later, SEALED) is Sisters.SUSPECT


@pytest.mark.parametrize(
    ("verdict", "suspect", "told"),
    [
        (SignVerdict.DISCARD, False, Sisters.LOOK_OVER),
        (SignVerdict.DO_NOT_TASTE, False, Sisters.LOOK_OVER),
        (SignVerdict.LOOK_AGAIN, True, Sisters.LOOK_OVER),
        (SignVerdict.LOOK_AGAIN, False, Sisters.NOTHING),
        (SignVerdict.USE_NOW, False, Sisters.NOTHING),
    ],
)
def test_one_bad_apple_is_culled_and_the_crate_looked_over(
    verdict: SignVerdict, suspect: bool, told: Sisters
) -> None:
    assert of_sisters(sign(verdict, suspect=suspect), PIECE) is told


@pytest.mark.parametrize("found", [SEALED, PIECE, Found(90, 3, False)])
def test_a_flood_came_over_all_that_stood_there(found: Found) -> None:
    assert of_sisters(sign(words="stood in flood water"), found) is Sisters.SUSPECT


@pytest.mark.parametrize("verdict", list(Verdict))
def test_a_bad_piece_does_not_throw_the_pile_away(verdict: Verdict) -> None:
    thrown = verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
    bad = sign(SignVerdict.DISCARD)
    assert of_pile(bad, verdict, PIECE) is (Verdict.NEEDS_CARE if thrown else verdict)
    assert of_pile(bad, verdict, SEALED) is verdict


def test_what_happened_to_all_of_a_pile_throws_all_of_it_away() -> None:
    """US storm advice: what flood water reached is discarded, and it shows on no piece."""
    wet = sign(words="stood in flood water")
    assert of_pile(wet, Verdict.DO_NOT_TASTE, PIECE) is Verdict.DO_NOT_TASTE


def test_what_lies_loose() -> None:
    assert {Method.CELLAR, Method.FRESH} == PILED
