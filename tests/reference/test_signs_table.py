"""The sign table names file, row and column of a bad cell, and keeps its promises."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from pantry_tui.core.safety.signs import DISPOSAL, SignVerdict
from pantry_tui.core.words import Method, Trust
from pantry_tui.errors import DataError
from pantry_tui.reference.signs import load_signs, read_signs
from pantry_tui.reference.tables import load_tables

Spoil = Callable[[str, int, str, str], None]


@pytest.mark.parametrize(
    ("column", "value"),
    [
        ("sign_id", ""),
        ("sign_id", "swollen-lid-open"),
        ("method", "wished"),
        ("method", ""),
        ("food", "moon cheese"),
        ("food", ""),
        ("seal", "ajar"),
        ("sign", ""),
        ("sign", "swollen lids"),
        ("means", ""),
        ("verdict", "probably fine"),
        ("do", ""),
        ("do", "one | | three"),
        ("disposal", "sink"),
        ("disposal", "none"),
        ("suspect_batch", "maybe"),
        ("hazard", ""),
        ("source_id", "hearsay"),
        ("trust", "sure"),
        ("trust", "household"),
    ],
)
def test_a_bad_cell_is_named(folder: Path, spoil: Spoil, column: str, value: str) -> None:
    """Row 4 is a leaking lid, which is not to be tasted."""
    spoil("signs.csv", 4, column, value)
    if column == "sign_id" and value:  # the row after the first of two is the one named
        spoil("signs.csv", 4, "sign", "something else")
    with pytest.raises(DataError) as caught:
        read_signs(folder, load_tables())
    assert f"signs.csv row 4, column {column}:" in caught.value.message


def test_a_missing_column_file_or_row_is_named(folder: Path) -> None:
    path = folder / "signs.csv"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("suspect_batch", "doubt", 1), encoding="utf-8")
    with pytest.raises(DataError, match=r"signs\.csv.*suspect_batch"):
        read_signs(folder, load_tables())
    path.write_text(text.partition("\n")[0] + "\n", encoding="utf-8")
    with pytest.raises(DataError, match=r"signs\.csv.*no sign"):
        read_signs(folder, load_tables())
    path.unlink()
    with pytest.raises(DataError, match=r"signs\.csv"):
        read_signs(folder, load_tables())


def test_there_are_signs_enough_and_each_names_its_source() -> None:
    signs = load_signs()
    assert len(signs) >= 150
    assert all(sign.source in load_tables().sources for sign in signs)


def test_every_method_has_a_sign_of_its_own() -> None:
    own = {m for sign in load_signs() if len(sign.methods) < len(Method) for m in sign.methods}
    assert set(Method) - own == set()


def test_what_goes_has_a_route_and_poison_never_a_mild_one() -> None:
    for sign in load_signs():
        assert sign.disposal in DISPOSAL
        if sign.verdict is SignVerdict.DO_NOT_TASTE and "botulism" in sign.hazard:
            assert sign.disposal in ("bag", "gloves-bag"), sign.id


def test_a_jar_that_can_be_closed_is_never_sent_to_be_opened() -> None:
    """Where a sign stands on closed containers alone, its route keeps them closed."""
    for sign in load_signs():
        if sign.seal == "closed" and sign.verdict is SignVerdict.DO_NOT_TASTE:
            assert sign.disposal == "bag", sign.id


def test_what_poisons_one_makes_its_batch_suspect() -> None:
    airless = {
        Method.BOILING_WATER,
        Method.PRESSURE,
        Method.IN_OIL,
        Method.HOT_SMOKED,
        Method.COLD_SMOKED,
    }
    for sign in load_signs():
        bad = sign.verdict is SignVerdict.DO_NOT_TASTE
        if bad and (airless & set(sign.methods) or "vacuum" in sign.words):
            assert sign.suspect_batch, sign.id


def test_memory_never_calls_a_danger_harmless() -> None:
    for sign in load_signs():
        if sign.trust is Trust.MEMORY and sign.verdict is SignVerdict.HARMLESS:
            assert sign.hazard == "quality", sign.id


def test_the_same_words_on_a_method_never_mean_two_verdicts() -> None:
    said: dict[tuple[Method, str], SignVerdict] = {}
    for sign in load_signs():
        for method in sign.methods:
            assert said.setdefault((method, sign.words), sign.verdict) is sign.verdict, sign.id
