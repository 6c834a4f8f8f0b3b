"""What stands where: every place with its stock, in path order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, shelf_title
from pantry_tui.app.lines import PlaceKey, Window, heading
from pantry_tui.app.rowtext import due_columns
from pantry_tui.app.screens.acts import Acts, Rates
from pantry_tui.app.screens.stock import StockList
from pantry_tui.app.widgets.line import Line, Source
from pantry_tui.core.words import Climate
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.lines import lines, shelves
from pantry_tui.services.stock.rows import Shelf


class ShelvesScreen(Acts, Rates, StockList):
    """Places as headings, their rows below."""

    here = "shelves"
    BINDINGS = bindings("shelves")
    empty = "There is no place yet: press a and name the first one."

    def start(self) -> int:
        """Where words are sought on what of it is eaten first, else on the first place."""
        found = self.oldest_found() if self.sought else None
        return found or 0

    _new = ""  # the path of a place that was made just now
    _filled = ""  # that of the last one, which is filled next

    def columns(self, width: int) -> tuple[Column, ...]:
        return due_columns(width, "method", longest=self.host.pantry.longest_code)

    def source(self, columns: tuple[Column, ...]) -> Source:
        pantry = self.host.pantry
        found = lines(pantry, order="place", text=self.sought)
        heads = list(_heads(shelves(pantry), found.heads(), empty=not self.sought))
        return Window(found, columns, heads=heads, marked=self.marked)

    def place_here(self) -> str:
        """The place of the line under the cursor; "" where there is none."""
        line = self.table.current
        if line is not None and line.row is not None:
            return line.row.place
        return line.key.path if line is not None and isinstance(line.key, PlaceKey) else ""

    def place_meant(self) -> str:
        """That place, where somebody went to it, or there is no other: on the first line the cursor
        stands by itself."""
        here = self.place_here()
        chosen = self.table.cursor_row > 0 or len(self.host.pantry.places) == 1
        return here if chosen or here == self._filled else ""

    def _place(self) -> str:
        """The same; where there is none it is said."""
        if place := self.place_here():
            return place
        self.host.tell("Put the cursor on a place first.", refused=True)
        return ""

    def action_correct(self) -> None:
        """The batch of a line; on the head of a place, the place."""
        line = self.table.current
        if line is None or not isinstance(line.key, PlaceKey):
            super().action_correct()
            return
        from pantry_tui.app.screens.records import change_place

        change_place(self.host, line.key.path, self.reload)

    def action_picture(self) -> None:
        """Drawn, a cell for each container."""
        from pantry_tui.app.screens.pictures import ShelfPicture

        self.app.push_screen(ShelfPicture())

    def action_reading(self) -> None:
        from pantry_tui.app.screens.ask import ask_line
        from pantry_tui.services.stock import readings

        if place := self._place():
            ask_line(
                self,
                f"What temperature has {place}?",
                "38F or 3C, then % humidity if known",
                lambda typed: readings.read_line(self.host.pantry, place, typed),
            )

    def action_outage(self) -> None:
        from pantry_tui.app.screens.powercut import walk_through

        if place := self._place():
            walk_through(self.host, place, self.reload)

    def action_add_place(self) -> None:
        from pantry_tui.app.screens.ask import ask_line
        from pantry_tui.services.stock import places

        def add(line: str) -> Done:
            known = set(self.host.pantry.place_paths())
            done = places.add_line(self.host.pantry, line)
            new = set(self.host.pantry.place_paths()) - known
            self._new = "".join(self.host.pantry.place_paths()[id_] for id_ in new)
            return done

        ask_line(
            self,
            "A new place: its name, its climate (room, pantry, cellar, fridge or freezer); then, "
            "if you like, in a place, 55F, room for 40",
            "shelf 3, pantry, in basement, 55F",
            add,
        )

    def settle_list(self) -> None:
        """The cursor goes to a place that was made just now: it is what is filled next."""
        super().settle_list()
        new, self._new = self._new, ""
        at = self.table.source.where(PlaceKey(new)) if new else None
        if at is not None:
            self._filled = new
            self.table.move_cursor(at)


def _heads(
    known: Sequence[Shelf], counts: Sequence[tuple[str, int]], *, empty: bool
) -> Iterator[tuple[Line, int]]:
    """A heading for each place that has rows, in the order of the rows, and where `empty` ones are
    shown those among them."""
    by_path = {shelf.path: shelf for shelf in known}
    waiting = iter([one for one in counts if one[0] in by_path])
    filled = {path for path, _ in counts}
    for shelf in by_path.values():  # two of one name, of an older merge, share a heading
        if shelf.path in filled:
            path, count = next(waiting)
            yield _head(by_path[path]), count
        elif empty:
            yield _head(shelf), 0


def _head(shelf: Shelf) -> Line:
    return heading(PlaceKey(shelf.path), shelf_title(shelf), _may_do(shelf))


def _may_do(shelf: Shelf) -> str:
    """What the keys do on a place."""
    cut = " x: the power was off here." if Climate(shelf.climate).is_cold else ""
    stands = "" if shelf.count else "Nothing stands here itself: p puts something up. "
    return f"{stands}r: its temperature. w: its name, climate, room; merge or remove it.{cut}"
