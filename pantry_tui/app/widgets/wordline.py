"""A sentence on the line under the cursor."""

from __future__ import annotations

from textwrap import wrap

from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.widgets.inunits import in_words

#: Lines it may take from the list.
MOST = 4


class WordLine(Static):
    """As high as its words; where they stay so, the screen need not be laid out anew."""

    DEFAULT_CSS = f"""
    WordLine {{ height: auto; max-height: {MOST}; padding: 0 1; background: $surface; }}
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
        tall = min(content.get_height(self.styles.get_rules(), size.width), MOST) if size else -1
        self.update(content, layout=tall != size.height)

    def on_resize(self) -> None:
        self.update(Content(self._fitting()))

    def _fitting(self) -> str:
        """What has room, and a mark where it is not all: Enter on the line shows the whole."""
        most, width = self.styles.max_height, self.content_size.width
        if not width or most is None or len(wrap(self._said, width)) <= most.value:
            return self._said
        return " ".join(wrap(self._said, width, max_lines=int(most.value), placeholder=" …"))
