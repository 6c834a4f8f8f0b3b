"""Low-acid food that somebody else canned is unknown, in whatever words it is said: nobody
knows how it was processed (Michigan State University Extension on jars of unknown history)."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

#: Written before the reader that takes them. "=" stands before what is a detail or a note.
PHRASES = """
    canned by somebody else; by somebody else; a gift; gift; gift from Aunt Ida; a present;
    birthday present; from the neighbour; from the neighbors; neighbour made it; by my
    neighbour; by a friend; my mother canned it; given to me; got from a friend; present from
    Lena; from a church sale; from a bake sale; from a roadside stand; from a farm stall; bought
    at a market; bought from a lady down the road; bought at a craft fair; swapped with a
    neighbor; traded at the garden club; inherited from grandma; grandma's canning; not canned
    by me; somebody else's canning; unknown canner; do not know who canned it; came with the
    house; from my sister's pantry; received as a present; by Aunt Ida; from a food swap;
    =by=Lena; =by=no; =by=?; =gift=yes; =maker=Lena; =note=from the neighbour; =note=a gift;
    =note=by Lena; =note=bought at the farmers market; =note=my mother canned it; =note=present
    from Lena; =note=inherited from grandma
"""
NOT_OFFERED = (None, Verdict.UNKNOWN, Verdict.DISCARD, Verdict.DO_NOT_TASTE)
SAID = [one.strip() for one in " ".join(PHRASES.split()).split(";")]


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=500)
    with open_pantry(tmp_path / "store.db", date(2026, 11, 26)) as pantry:
        places.add(pantry, "larder", "pantry")
        yield pantry


def booked(p: Pantry, line: str) -> Verdict | None:
    """The verdict on what was put up; None where the line is refused or asked about."""
    try:
        reading = putup.read(p, line)
        return Verdict(putup.put_up(p, reading).verdict)
    except BadInput:
        return None


@pytest.mark.parametrize("food", ["sweet corn", "snap beans", "beef stew", "venison"])
@pytest.mark.parametrize("said", SAID)
def test_it_is_never_offered(p: Pantry, food: str, said: str) -> None:
    for how in ("pressure canned", "home canned", "bought in"):
        line = f"4 pint jars {food}, {how}, larder, 1 oct 2026, {said.removeprefix('=')}"
        assert booked(p, line) in NOT_OFFERED, line


@pytest.mark.parametrize("said", ["a gift", "from the neighbour", "by my neighbour", "gift from "
                                  "Aunt Ida", "from a church sale",
                                  "note=a gift", "note=by Lena", "by somebody else"])  # fmt: skip
def test_it_is_understood_and_booked_as_unknown(p: Pantry, said: str) -> None:
    line = f"4 pint jars sweet corn, pressure canned, larder, 1 oct 2026, {said}"
    assert booked(p, line) is Verdict.UNKNOWN


@pytest.mark.parametrize("said", ["by=us", "gift=no", "by=me", "note=a gift for Lena",
                                  "note=recipe from my mother", "note=good", ""])  # fmt: skip
def test_ones_own_stays_ones_own(p: Pantry, said: str) -> None:
    line = f"4 pint jars sweet corn, pressure canned, larder, 1 oct 2026, {said}"
    assert booked(p, line) is Verdict.SOUND
