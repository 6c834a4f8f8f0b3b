"""A jar that did not seal and is processed once more within a day: made that day, by a process of
its own. Later, or of any other jar, it is opened food."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import leaving, view
from pantry_tui.services.stock.seen import At

BEANS = "5 pint jars runner beans, pressure canned, 20 min, 11 lb, larder"
AGAIN = "1 pint jar, pressure canned, 20 min, 11 lb, larder"
SEALED = date(2026, 11, 21)


def up(p: Pantry, line: str = BEANS) -> str:
    p.today = date(2026, 11, 20)
    code = putup.put_up(p, putup.read(p, line), at=At(p.today, 20 * 60)).code
    p.today = SEALED
    return code


def unsealed(p: Pantry, code: str) -> None:
    signs.mark(p, f"{code}/1", "seal failed", at=At(SEALED, 8 * 60))


def test_what_did_not_seal_is_processed_again_within_a_day(larder: Pantry) -> None:
    code = up(larder)
    unsealed(larder, code)
    made = repack.repack(larder, f"{code}/1", AGAIN, at=At(SEALED, 9 * 60))
    assert made.verdict is Verdict.SOUND
    assert made.best_by == date(2027, 11, 21)
    larder.today = date(2026, 12, 24)
    row = next(one for one in view.due(larder) if one.code == made.code)
    assert row.verdict is Verdict.SOUND


def test_the_same_by_a_line_that_names_what_it_is_from(larder: Pantry) -> None:
    code = up(larder)
    unsealed(larder, code)
    line = f"1 pint jar runner beans, pressure canned, 20 min, 11 lb, larder from {code}/1"
    again = putup.put_up(larder, putup.read(larder, line), at=At(SEALED, 9 * 60))
    assert again.verdict is Verdict.SOUND


def test_too_little_of_it_is_as_much_in_doubt_as_ever(larder: Pantry) -> None:
    code = up(larder)
    unsealed(larder, code)
    short = AGAIN.replace("20 min", "5 min")
    found = repack.repack(larder, f"{code}/1", short, at=At(SEALED, 9 * 60))
    assert found.verdict is Verdict.UNKNOWN


@pytest.mark.parametrize(
    ("line", "hour"),
    [
        (AGAIN, 21),  # more than a day after it was put up
        ("1 pint jar, larder", 9),  # no process told
    ],
)
def test_later_or_without_a_process_it_is_an_opened_jar(
    larder: Pantry, line: str, hour: int
) -> None:
    code = up(larder)
    unsealed(larder, code)
    with pytest.raises(Refused, match="opened low-acid jar"):
        repack.repack(larder, f"{code}/1", line, at=At(SEALED, hour * 60))


def test_so_is_a_jar_that_had_sealed_or_of_which_more_was_seen(larder: Pantry) -> None:
    code = up(larder)
    unsealed(larder, code)
    with pytest.raises(Refused, match="opened low-acid jar"):
        repack.repack(larder, f"{code}/2", AGAIN, at=At(SEALED, 9 * 60))
    signs.mark(larder, f"{code}/1", "mould", at=At(SEALED, 9 * 60))
    with pytest.raises(Refused):
        repack.repack(larder, f"{code}/1", AGAIN, at=At(SEALED, 10 * 60))


def test_one_that_was_in_doubt_before_is_no_better_for_it(larder: Pantry) -> None:
    code = up(larder, BEANS.replace("20 min", "5 min"))
    unsealed(larder, code)
    with pytest.raises(Refused):
        repack.repack(larder, f"{code}/1", AGAIN, at=At(SEALED, 9 * 60))


def test_a_seal_that_failed_within_a_day_and_is_told_late_says_as_little_of_the_others(
    larder: Pantry,
) -> None:
    code = up(larder)
    larder.today = date(2026, 11, 23)
    told = signs.mark(larder, f"{code}/1", "seal failed", at=At(SEALED, 8 * 60))
    assert told.sign.startswith("unsealed within a day")
    assert told.verdict is Verdict.DISCARD  # it stood so for two days
    assert not any("Process again" in one or "fridge" in one for one in told.do)
    others = [one.verdict for one in view.due(larder) if f"{code}/2" in one.container_ids]
    assert not {Verdict.UNKNOWN, Verdict.DO_NOT_TASTE, Verdict.DISCARD} & set(others)


def test_the_same_of_a_jar_that_was_thrown_away_for_it(larder: Pantry) -> None:
    code = up(larder)
    larder.today = date(2026, 11, 23)
    leaving.discard(larder, f"{code}/1", why="seal failed", at=At(SEALED, 8 * 60))
    assert all(one.verdict is not Verdict.UNKNOWN for one in view.due(larder) if one.code == code)


def test_found_in_storage_it_is_in_all_of_them(larder: Pantry) -> None:
    code = up(larder)
    larder.today = date(2026, 11, 24)
    told = signs.mark(larder, f"{code}/1", "seal failed", at=At(date(2026, 11, 23), 8 * 60))
    assert told.sign.startswith("loose lid")
    found = [one.verdict for one in view.due(larder) if one.code == code]
    assert Verdict.UNKNOWN in found
