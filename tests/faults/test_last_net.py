"""An error of ours: what a person is told of it is true, and no traceback is painted."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.app.endings import WRONG
from pantry_tui.app.main import PantryApp
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.safekeeping.transfer import export_log, import_log
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import tables, view
from tests.cli.conftest import Kitchen, kitchen, small_store

__all__ = ["kitchen", "small_store"]

TODAY = date(2026, 11, 25)
JAM = ("putup", "3 pint jars plum jam, jam, shelf 2, yesterday")


def broken(*_: object, **__: object) -> Any:
    raise OverflowError("a figure of ours")


def test_an_error_before_the_commit_books_nothing(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = kitchen.answer("log")
    monkeypatch.setattr(tables, "lines_of", broken)
    code, out, err = kitchen.run(*JAM)
    monkeypatch.undo()
    assert (code, out) == (1, "")
    assert "(OverflowError): nothing was booked" in err
    assert kitchen.answer("log") == before


def test_an_error_behind_the_commit_does_not_say_that_nothing_was_booked(
    kitchen: Kitchen, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = kitchen.answer("log")
    monkeypatch.setattr("pantry_tui.cli.printing.putup.putup", broken)
    code, _, err = kitchen.run(*JAM)
    monkeypatch.undo()
    assert code == 1
    assert "(OverflowError): what you did is booked" in err
    assert len(kitchen.answer("log")) == len(before) + 1


@pytest.mark.parametrize("size", ["9" * 400 + " pint", "-3 pint", "0 pint", "1/0 pint"])
def test_no_typed_size_is_booked_unread(kitchen: Kitchen, size: str) -> None:
    before = kitchen.booked()
    flags = ("--food", "plum jam", "--method", "jam", "--place", "shelf 2")
    for words in (
        ("putup", *flags, f"--size={size}"),
        ("putup", *flags, "--size=pint", f"--container={size}"),
        ("correct", "{peaches}", f"--size={size}"),
    ):
        code, out, err = kitchen.run(*words)
        assert (code, out, err.count("\n")) == (2, "", 1), (words, err)
        assert "size" in err
    assert kitchen.booked() == before


@pytest.fixture
def odd(tmp_path: Path) -> Path:
    """A store whose log holds a size that was taken before sizes were bounded."""
    create(tmp_path / "one.db")
    with open_pantry(tmp_path / "one.db", TODAY) as p:
        _fill(p)
        export_log(p, tmp_path / "log.json")
    rows = json.loads((tmp_path / "log.json").read_text())
    for row in rows["events"]:
        if row["did"] == "put_up":
            row["says"]["size"] = "9" * 400 + " pint jars"
    (tmp_path / "log.json").write_text(json.dumps(rows))
    create(tmp_path / "odd.db")
    import_log(tmp_path / "odd.db", tmp_path / "log.json", TODAY)
    return tmp_path / "odd.db"


def _fill(p: Pantry) -> None:
    from pantry_tui.services.batchwork import putup
    from pantry_tui.services.stock import places

    places.add(p, "larder", "pantry")
    putup.put_up(p, putup.read(p, "3 pint jars plum jam, jam, larder, yesterday"))


async def test_an_old_log_with_such_a_size_opens_and_is_named(odd: Path) -> None:
    with open_pantry(odd, TODAY) as p:
        assert [row.count for row in view.due(p)] == [3]
        async with PantryApp(p).run_test() as pilot:
            await pilot.press("u", "S")
    found = verify(odd, TODAY)
    assert found.ok
    assert any("size of" in one and "not understood" in one for one in found.notes)


async def test_an_app_that_breaks_leaves_with_one_sentence(
    odd: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("PANTRY_DEBUG", raising=False)
    with open_pantry(odd, TODAY) as p:
        app = PantryApp(p)
        shown: list[object] = []

        async def breaks() -> None:
            async with app.run_test() as pilot:
                monkeypatch.setattr(app, "look_around", broken)
                app.call_later(app.look_around)
                await pilot.pause()
                shown.extend(app._exit_renderables)

        with pytest.raises(OverflowError):  # as the test frame sees it
            await breaks()
        assert shown == [WRONG.format("OverflowError")]
        assert app.return_code == 1
