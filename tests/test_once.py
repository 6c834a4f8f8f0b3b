"""What is shared by the workers of a run is made by one of them."""

from __future__ import annotations

from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import pytest

from tests.once import once


def _one_more(folder: Path) -> None:
    with (folder / "makers").open("a", encoding="utf-8") as file:
        file.write("x\n")


def _ask(root: Path) -> str:
    return (once(root, "thing", _one_more) / "makers").read_text(encoding="utf-8")


def test_of_many_processes_one_makes_it_and_all_see_it(tmp_path: Path) -> None:
    with ProcessPoolExecutor(4, mp_context=get_context("spawn")) as pool:
        assert list(pool.map(_ask, [tmp_path] * 8)) == ["x\n"] * 8


def test_what_failed_is_tried_again(tmp_path: Path) -> None:
    def broken(folder: Path) -> None:
        _one_more(folder)
        raise RuntimeError("no room left")

    with pytest.raises(RuntimeError, match="no room"):
        once(tmp_path, "thing", broken)
    assert _ask(tmp_path) == "x\nx\n"
    assert _ask(tmp_path) == "x\nx\n"
