"""After what the cursor stood on is gone it stands on stock: the next there is."""

from __future__ import annotations

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.app.screens.meant import pieces_of
from pantry_tui.app.widgets.line import Line
from pantry_tui.services.pantry import Pantry
from tests.app.screens import all_lines, table


def _one_jar(line: Line) -> bool:
    """Whether one key discards all of the line."""
    row = line.row
    return row is not None and row.count == 1 and not row.loose and not pieces_of(row)


async def _discarded_at(demo: Pantry, room: str, *, by_code: bool) -> None:
    """The last line of each part of a list but the last one: below it stands a heading."""
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press(*room)
        tried = 0
        for _ in range(2):
            lines = all_lines(pilot)
            ends = [
                n
                for n, line in enumerate(lines[:-1])
                if _one_jar(line)
                and not lines[n + 1].ref
                and any(one.ref for one in lines[n + 1 :])
            ]
            if not ends:
                break
            at = ends[0]
            line = lines[at]
            wanted = next(one.key for one in lines[at + 1 :] if one.ref)
            if by_code:
                assert line.row is not None
                await pilot.press(*line.row.container_ids[0], "d", "1")
            else:
                table(pilot).move_cursor(at)
                await pilot.press("d", "1")
            now = table(pilot).current
            assert now is not None
            assert now.ref, "it is stock"
            assert now.key == wanted
            tried += 1
        assert tried


@pytest.mark.parametrize("by_code", [True, False])
@pytest.mark.parametrize("room", ["D"])
async def test_the_cursor_goes_to_the_next_batch_and_no_heading(
    demo: Pantry, room: str, by_code: bool
) -> None:
    await _discarded_at(demo, room, by_code=by_code)


async def test_below_the_last_it_goes_to_the_one_before(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        lines = all_lines(pilot)
        at = max(n for n, one in enumerate(lines) if _one_jar(one))
        table(pilot).move_cursor(at)
        await pilot.press("d", "1")
        now = table(pilot).current
        assert now is not None
        assert now.ref
        assert now.key == next(one.key for one in [*lines[at + 1 :], lines[at - 1]] if one.ref)
