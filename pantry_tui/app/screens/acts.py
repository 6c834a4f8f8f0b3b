"""What may be done to stock, as parts that a screen is made of: it has the keys of those alone.

The doing itself is in `acting`, which is loaded when something is first done.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.app.screens.listing import ListScreen

if TYPE_CHECKING:
    from pantry_tui.app.screens.acting import Acting
    from pantry_tui.app.widgets.line import Key, Line
    from pantry_tui.services.rows import Take


class Undoes(ListScreen):
    """Takes back the last thing done, and does it again."""

    def action_undo(self) -> None:
        from pantry_tui.app.screens.undoing import take_back

        take_back(self.host, self.took_back)

    def action_redo(self) -> None:
        from pantry_tui.app.screens.undoing import do_again

        do_again(self.host, self.took_back)

    def took_back(self, names: frozenset[str]) -> None:
        """Show the list again; the cursor goes to what is back, to do it otherwise."""
        self.reload()
        line = self.table.current
        row = line.row if line else None
        if row is not None and not names.isdisjoint(row.container_ids):
            return
        for name in sorted(names):
            at = self.table.source.find(name)
            if at is not None:
                self.table.move_cursor(at)
                return


class Touches(Undoes):
    """A line may be moved elsewhere, and a sign of it told."""

    _acting: Acting | None = None

    def __init__(self) -> None:
        super().__init__()
        self.marked: set[Key] = set()

    @property
    def acting(self) -> Acting:
        """What does things to the lines that are meant."""
        if self._acting is None:
            from pantry_tui.app.screens.acting import Acting

            self._acting = Acting(self)
        return self._acting

    def planned(self, line: Line) -> Take | None:
        """What the plan of the week takes there: None but on a line of the week's menu."""
        return None

    def action_move(self) -> None:
        self.acting.move()

    def action_sign(self) -> None:
        self.acting.sign()


class Acts(Touches):
    """All that is done to stock from day to day, to one line or to all that are marked."""

    def action_mark(self) -> None:
        self.acting.mark()

    def action_use(self) -> None:
        self.acting.use()

    def action_open(self) -> None:
        self.acting.open()

    def action_thaw(self) -> None:
        self.acting.thaw()

    def action_discard(self) -> None:
        self.acting.discard()

    def action_give(self) -> None:
        self.acting.give()

    def action_ready(self) -> None:
        self.acting.ready()

    def action_missing(self) -> None:
        self.acting.missing()


class Rates(Touches):
    """What is said of a batch: for whom it is set apart, how it was at table."""

    @property
    def rated_ref(self) -> str:
        """The batch that was eaten of: that of the line."""
        line = self.table.current
        return line.ref if line else ""

    def action_reserve(self) -> None:
        self.acting.reserve()

    def action_rate(self) -> None:
        self.acting.rate(self.rated_ref)

    def action_process(self) -> None:
        self.acting.process(self.rated_ref)

    def action_correct(self) -> None:
        """What was recorded at the put-up is put right."""
        self.acting.correct(self.rated_ref)

    def action_timer(self) -> None:
        self.acting.timer(self.rated_ref)
