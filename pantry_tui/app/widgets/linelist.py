"""A list that holds no more lines than it paints, and never loses its place."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from rich.cells import cell_len, set_cell_size
from rich.segment import Segment
from rich.style import Style
from textual.binding import Binding
from textual.events import Blur, Click, Focus, Key, Resize
from textual.geometry import Size
from textual.message import Message
from textual.scroll_view import ScrollView
from textual.strip import Strip

from pantry_tui.app.format import Column, clip, keep_indent, short_unit
from pantry_tui.app.theme import style_of
from pantry_tui.app.widgets.inunits import contents_in_units, in_units
from pantry_tui.app.widgets.line import Cell, Line, Listed, Source
from pantry_tui.app.widgets.line import Key as LineKey
from pantry_tui.services.inunits import TYPED

#: Lines that are fetched on each side of what is painted, so that not every step asks again.
MARGIN = 8
#: So many of the next lines are looked for when the one under the cursor is gone.
_NEAR = 6

_NOTHING = Listed(())


class LineList(ScrollView, can_focus=True):
    """Columns under their heads, a cursor on one line; what is on it is `current`."""

    COMPONENT_CLASSES = {"line--head", "line--cursor"}
    DEFAULT_CSS = """
    LineList { background: $background; overflow-x: hidden; scrollbar-size-vertical: 1; }
    LineList:focus, LineList:focus > .line--head { background-tint: $foreground 5%; }
    LineList > .line--head { background: $panel; color: $foreground; text-style: bold; }
    LineList > .line--cursor { background: $panel; }
    LineList:focus > .line--cursor { background: $panel-lighten-1; text-style: bold; }
    """
    BINDINGS = [
        Binding("up", "cursor(-1)", "up", show=False),
        Binding("down", "cursor(1)", "down", show=False),
        Binding("pageup", "page(-1)", "page up", show=False),
        Binding("pagedown", "page(1)", "page down", show=False),
        Binding("home,ctrl+home", "end(-1)", "first line", show=False),
        Binding("end,ctrl+end", "end(1)", "last line", show=False),
    ]

    class Moved(Message):
        """The cursor stands on another line."""

        def can_replace(self, message: Message) -> bool:
            return isinstance(message, LineList.Moved)

    class Chosen(Message):
        """The line under the cursor was clicked."""

    class Lettered(Message):
        """A letter was typed that is to be sought."""

        def __init__(self, letter: str) -> None:
            super().__init__()
            self.letter = letter

    def __init__(self, id: str = "list") -> None:
        super().__init__(id=id)
        self._acts = False  # the next letter acts: a full stop was typed
        self.columns: tuple[Column, ...] = ()
        self.source: Source = _NOTHING
        self.cursor_row = 0
        self._held: Sequence[Line] = ()
        self._from = 0  # the line that `_held` begins with
        self._styles_used: dict[str, Style] = {}
        self._inks: dict[str, Style] = {}

    # -- what is in it ---------------------------------------------------------------------------

    def show(
        self,
        columns: tuple[Column, ...],
        source: Source,
        start: Callable[[], int] = int,
        *,
        top: bool = False,
    ) -> None:
        """Show what `source` has now. The cursor stays with what it stood on, else on the stock
        that came after it, else where it was (with `top` on `start()` again); in a list that was
        empty it stands on `start()`."""
        current, row, was = self.current, self.cursor_row, self.source.total
        after = self._stock_after(row) if current is not None and current.ref and not top else ()
        self.columns, self.source, self._held = columns, source, ()
        at = source.where(current.key) if current and not top else None
        if at is None:
            places = (source.where(key) for key in after)
            at = next((one for one in places if one is not None), None)
        if at is None:
            at = start() if not was or top else row
        self.cursor_row = max(0, min(at, source.total - 1))
        self._stretch()
        self._to_cursor()
        self.refresh()

    def _stock_after(self, row: int) -> Sequence[LineKey]:
        """The next lines of stock as they were shown, then the ones before, the nearest first; what
        is only said of some stock, in a line of words, is none."""
        held = self._held
        here = row - self._from
        lines = [*held[here + 1 :], *reversed(held[: max(here, 0)])]
        return [line.key for line in lines if line.ref and not line.whole][:_NEAR]

    @property
    def current(self) -> Line | None:
        """The line under the cursor."""
        return self.line(self.cursor_row)

    def line(self, at: int) -> Line | None:
        """One line, with its neighbours fetched where it is not at hand."""
        if not 0 <= at < self.source.total:
            return None
        if not self._from <= at < self._from + len(self._held):
            self._fetch(at)
        # Another window may have emptied the list since its length was asked.
        number = at - self._from
        return self._held[number] if 0 <= number < len(self._held) else None

    def _fetch(self, at: int) -> None:
        """What is painted around `at`, and a margin."""
        tall, top = self._tall or self.app.size.height, self.scroll_offset.y
        first = top if top <= at < top + tall else max(0, at - tall // 2)
        self._from = max(0, first - MARGIN)
        self._held = self.source.lines(self._from, first + tall + MARGIN)

    @property
    def _tall(self) -> int:
        """How many lines are painted, the heads left out."""
        return max(self.container_size.height - 1, 0)

    def _stretch(self) -> None:
        """As long as its lines. Only a scroll bar that comes or goes makes the screen lay itself
        out anew, so the size is set without asking for that."""
        size = Size(0, self.source.total + 1)
        if size != self.virtual_size:
            self.set_reactive(LineList.virtual_size, size)
            self._scroll_update(size)

    # -- the cursor ------------------------------------------------------------------------------

    def move_cursor(self, row: int) -> None:
        """Put the cursor on a line, the nearest there is."""
        row = max(0, min(row, self.source.total - 1))
        old, self.cursor_row = self.cursor_row, row
        self._to_cursor()
        if row != old:
            self.refresh_line(old + 1)
            self.refresh_line(row + 1)
            self.post_message(self.Moved())

    def go_to(self, ref: str) -> bool:
        """Put the cursor on the line of a container or a lid code, unless it is there."""
        at = self.source.find(ref)
        if at is not None:
            self.move_cursor(at)
        return at is not None

    def _to_cursor(self) -> None:
        top, tall = self.scroll_offset.y, self._tall
        if not tall:
            return
        if self.cursor_row < top:
            self.scroll_to(y=self.cursor_row, animate=False)
        elif self.cursor_row >= top + tall:
            self.scroll_to(y=self.cursor_row - tall + 1, animate=False)

    def on_resize(self, event: Resize) -> None:
        self._to_cursor()

    def action_cursor(self, by: int) -> None:
        self.move_cursor(self.cursor_row + by)

    def action_page(self, by: int) -> None:
        self.move_cursor(self.cursor_row + by * max(self._tall - 1, 1))

    def action_end(self, by: int) -> None:
        self.move_cursor(0 if by < 0 else self.source.total - 1)

    def on_click(self, event: Click) -> None:
        """A click takes the cursor there; where it stands already the line is chosen."""
        at = event.y - 1 + self.scroll_offset.y
        if event.y < 1 or at >= self.source.total:
            return
        event.stop()
        if at == self.cursor_row:
            self.post_message(self.Chosen())
        self.move_cursor(at)

    def on_key(self, event: Key) -> None:
        """Where letters are to search they do so, but for one behind a full stop, which acts."""
        typed = event.character or ""
        if not self._letters_search or not (typed == "." or typed.isalpha()):
            return
        acts, self._acts = self._acts, typed == "."
        if typed == "." or not acts:
            event.stop()
        if typed != "." and not acts:
            self.post_message(self.Lettered(typed))

    @property
    def _letters_search(self) -> bool:
        """Whether letters look for what they begin instead of acting: a setting."""
        return bool(getattr(getattr(self.app, "settings", None), "letters_search", False))

    def on_focus(self, event: Focus) -> None:
        self._repaint_cursor()

    def on_blur(self, event: Blur) -> None:
        self._repaint_cursor()

    def _repaint_cursor(self) -> None:
        """It looks otherwise with the keys than without."""
        self._styles_used.clear()
        self.refresh_line(self.cursor_row + 1)

    # -- painting --------------------------------------------------------------------------------

    def notify_style_update(self) -> None:
        super().notify_style_update()
        self._styles_used.clear()
        self._inks.clear()

    def _style(self, name: str) -> Style:
        if name not in self._styles_used:
            # Partial: the ink of the line stays its own under the cursor.
            partial = name == "line--cursor"
            self._styles_used[name] = self.get_component_rich_style(name, partial=partial)
        return self._styles_used[name]

    def _ink(self, role: str) -> Style:
        """What a role looks like in the theme of the app."""
        if role not in self._inks:
            self._inks[role] = Style.parse(style_of(role, self.app.theme))
        return self._inks[role]

    def render_line(self, y: int) -> Strip:
        width, base = self.scrollable_content_region.width, self.rich_style
        if not y:
            heads = tuple((column.label, "") for column in self.columns)
            return self._strip(heads, width, base + self._style("line--head"))
        at = y - 1 + self.scroll_offset.y
        line = self.line(at)
        if line is None:
            return Strip.blank(width, base)
        over = Style.null()
        if at == self.cursor_row:
            over = self._style("line--cursor")
        here = at == self.cursor_row
        if line.whole:
            text, style = in_units(self, line.cells[0][0]), line.cells[0][1]
            room = max(sum(column.width for column in self.columns), 0)
            said = Segment(
                set_cell_size(keep_indent(text, room), max(width - 1, 0)),
                base + self._ink(style) + over,
            )
            return Strip([_gutter(base + over, here=here), said], width)
        return self._strip(line.cells, width, base, over, here=here)

    def _strip(
        self,
        cells: Sequence[Cell],
        width: int,
        base: Style,
        over: Style | None = None,
        *,
        here: bool = False,
    ) -> Strip:
        """Cells in their columns, the rest of the line blank. The cursor's ground is `over` theirs.
        Every piece has a style: without colours one that had none would not be painted."""
        over = over or Style.null()
        pieces, left = [_gutter(base + over, here=here)], width - 1
        for (text, style, *behind), column in zip(cells, self.columns, strict=False):
            room = min(column.width, left)
            shown = self._in_units(text, column)
            tail, quiet = behind or ("", "")
            said = min(cell_len(shown), room) if tail else room
            pieces.append(Segment(set_cell_size(shown, said), base + self._ink(style) + over))
            if tail:
                rest = set_cell_size(tail, room - said)
                pieces.append(Segment(rest, base + self._ink(quiet) + over))
            left -= room
        if left:
            pieces.append(Segment(" " * left, base + over))
        return Strip(pieces, width)

    def _in_units(self, text: str, column: Column) -> str:
        """A cell in the units of the household; names stay as they were typed. What is left may
        be longer then: its unit is said short, then its blanks give way."""
        if column.field not in ("left", "count"):
            return text if column.field in TYPED else in_units(self, text)
        said, room = contents_in_units(self, text), column.width - 1
        if cell_len(said) <= room:
            return said
        bare = said.strip()
        short = f"{said[: len(said) - len(said.lstrip())]}{short_unit(bare, 0)}"
        return short if cell_len(short) <= room else clip(short_unit(bare, room), room)


def _gutter(style: Style, *, here: bool) -> Segment:
    """The left edge of everything; a mark where the cursor is, seen without any colour."""
    return Segment("›" if here else " ", style)
