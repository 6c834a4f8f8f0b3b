"""A sentence on the line under the cursor."""

from __future__ import annotations

import re
from textwrap import wrap

from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.widgets.inunits import in_words
from pantry_tui.app.widgets.keyline import LOW

#: Lines it may take from the list, and of what has no room in them one in so many of the screen's.
MOST, SHARE = 4, 4
#: Behind what has no room at all, the longer one where it has any.
_CUT = (" … Enter: all of it", " …")


class WordLine(Static):
    """As high as its words; where they stay so, the screen need not be laid out anew."""

    DEFAULT_CSS = """
    WordLine { height: auto; padding: 0 1; background: $surface; }
    """

    def __init__(self) -> None:
        super().__init__(id="word")
        self._said = ""
        self.display = False

    def say(self, text: str) -> None:
        """Show `text` instead of what stands there."""
        text = in_words(self, text)
        if text == self._said:
            return
        self._said = text
        self.display = bool(text)
        size = self.content_size
        content = Content(self._fitting())
        tall = content.get_height(self.styles.get_rules(), size.width) if size else -1
        self.update(content, layout=tall != size.height)

    def on_resize(self) -> None:
        self.update(Content(self._fitting()))

    def _fitting(self) -> str:
        """What has room, and the key that shows the rest where it is not all."""
        # It is as wide as the screen, also before it is laid out for the first time.
        most, width = self._most(), max(self.app.size.width - 2, 1)
        if len(wrap(self._said, width)) <= most:
            return self._said
        mark = _CUT[width < 2 * len(_CUT[0]) - 2]
        return " ".join(wrap(self._said, width, max_lines=most, placeholder=mark))

    def _most(self) -> int:
        """Lines that it may have on this screen."""
        height = self.app.size.height
        return 1 if height < LOW else max(MOST, height // SHARE)

    def unsaid(self, text: str) -> str:
        """`text` without its sentences that stand here already, whole; its first one stays."""
        first, *others = re.split(r"(?<=[.!?])\s+", text)
        if not self.display or self.cut:
            return text
        return " ".join([first, *(one for one in others if one not in self._said)])

    @property
    def cut(self) -> str:
        """The whole of what has no room, "" where all of it stands there."""
        return self._said if self._fitting() != self._said else ""
