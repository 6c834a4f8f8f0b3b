"""Jars of a metric kitchen: by their makers' manuals, or by the published sizes alone."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.safety.metric_jars import LITRE, by_maker, is_litre
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.reference.tables import load_tables
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.lookup.process import process
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.rows import PutUp
from pantry_tui.services.stock import places

TODAY = date(2026, 11, 25)


@pytest.fixture(params=["metric", "us"])
def p(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", units=request.param, altitude_ft=300)
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        places.add(p, "larder", "pantry")
        yield p


def up(p: Pantry, line: str) -> PutUp:
    return putup.put_up(p, putup.read(p, line))


def sound(made: PutUp) -> bool:
    return made.verdict in (Verdict.SOUND, Verdict.EAT_SOON)


#: As the makers' manuals in Canada print them (shared figures: 45 pairs, all equal to the federal
#: minutes), for acid food and jam, then for food of low acid.
MANUALS = [
    ("250 ml jars", "half-pint", "pint"),
    ("500 ml", "pint", "quart"),
    ("1 litre jar", "quart", "quart"),
    ("1-litre jars", "quart", "quart"),
    ("1 l", "quart", "quart"),
    ("750 ml", "quart", "quart"),
    ("1.5 l jars", None, None),
    # Never smaller than it is, however its size is written.
    ("1½ litre jars", None, None),
    ("1,5 l", None, None),
    ("1 1/2 litre", None, None),
    ("two-litre jars", None, None),
    ("one and a half litre jars", None, None),
    ("1,500 ml", None, None),
    ("1.500 ml", None, None),
    ("6 750 ml jars", "quart", "quart"),
    ("½ litre", "pint", "quart"),
    ("half-litre jars", "pint", "quart"),
    ("0,5 l", "pint", "quart"),
    ("litre jars", "quart", "quart"),
    ("251 ml", "pint", "quart"),
    ("501 millilitres", "quart", "quart"),
    ("1001 ml", None, None),
    ("2 litre jars", None, None),
    ("pint jars", None, None),
    ("quart jars", None, None),
    ("small jars", None, None),
]


@pytest.mark.parametrize(("size", "acid", "low_acid"), MANUALS)
def test_a_metric_jar_takes_the_time_of_a_published_one(
    size: str, acid: str | None, low_acid: str | None
) -> None:
    assert by_maker(size, low_acid=False) == acid
    assert by_maker(size, low_acid=True) == low_acid


@pytest.mark.parametrize(
    ("size", "litre"),
    [("946 ml", False), ("947 ml", True), ("1 l", True), ("1,000 ml", True), ("1001 ml", False),
     ("1½ litre", False), ("quart", False)],
)  # fmt: skip
def test_a_litre_is_more_than_a_quart_and_no_more_than_itself(size: str, litre: bool) -> None:
    """A US quart is 946.4 ml: what holds no more needs no word of a maker."""
    assert is_litre(size) is litre


@pytest.mark.parametrize("jar", ["1½-litre", "two-litre", "1.5l", "1,5-litre", "1,500ml"])
def test_a_jar_of_more_than_a_litre_is_not_taken_for_one(p: Pantry, jar: str) -> None:
    line = "6 jars peaches, boiling-water canned, larder, minutes=30 pack=raw"
    assert not sound(up(p, f"{line} jar={jar}"))


def test_a_metric_kitchen_can_live_in_its_jars(p: Pantry) -> None:
    metric = p.units == "metric"
    assert p.jars == ("maker" if metric else "strict")
    assert sound(up(p, "6 500 ml jars plum jam, larder")) is metric
    peaches = up(p, "6 1-litre jars peaches, boiling-water canned, larder, minutes=30 pack=raw")
    assert sound(peaches) is metric
    beans = up(p, "6 1-litre jars runner beans, pressure canned, larder, minutes=25 psi=11")
    assert sound(beans) is metric
    assert (LITRE in beans.standing) is metric
    too_short = up(p, "6 1-litre jars runner beans, pressure canned, larder, minutes=20 psi=11")
    assert not sound(too_short), "the quart's time, never the pint's"
    half = up(p, "6 500 ml jars runner beans, pressure canned, larder, minutes=20 psi=11")
    assert not sound(half), "half a litre of low-acid food takes the quart's time"


def test_the_household_says_whose_times_it_follows(p: Pantry) -> None:
    household.change(p, jars="strict")
    strict = "6 1-litre jars peaches, boiling-water canned, larder, minutes=30 pack=raw"
    assert not sound(up(p, strict))
    told = household.change(p, jars="maker").message
    assert told
    assert household.facts(p).jars == "maker"
    assert sound(up(p, strict))
    with pytest.raises(BadInput):
        household.change(p, jars="anybody")


def test_the_published_process_of_a_litre_is_told_by_the_manual_alone() -> None:
    tables = load_tables()
    strict = process(tables, "runner beans", "1 litre", "dial", "hot", 500)
    assert strict["answer"] == "not published"
    maker = process(tables, "runner beans", "1 litre", "dial", "hot", 500, "maker")
    quart = process(tables, "runner beans", "quart", "dial", "hot", 500)
    assert (maker["answer"], maker["minutes"]) == ("process", quart["minutes"])
    assert maker["reasons"][0] == LITRE
    large = process(tables, "peaches", "2 litre", "boiling-water", "hot", 500, "maker")
    assert large["answer"] == "not published"
