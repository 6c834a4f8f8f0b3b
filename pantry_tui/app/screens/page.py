"""A page of text to read and close: the keys of a screen, what a sign means."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Static

from pantry_tui.app.commands import BY_NAME, Own, of
from pantry_tui.app.format import hang
from pantry_tui.app.widgets.inunits import in_words
from pantry_tui.app.widgets.more import More
from pantry_tui.core.words import MARK

VERDICTS = "Verdicts: " + ", ".join(f"{mark} {verdict}" for verdict, mark in MARK.items()) + "."
LIMITS = (
    "Best by is quality: after it the food is past its best, and safe if sound. Discard after is "
    "safety: the last day on which published guidance still allows eating it."
)


GUIDES = "F1: short guides, for a first evening, a power cut, a suspect jar ..."

#: A key that stands under a page, what it does, and the answer that the page is left with.
Answer = tuple[str, str, str]

CLOSES: tuple[Answer, ...] = (("Esc", "closes this", "None"),)
#: Where a question follows the page.
GOES_ON: tuple[Answer, ...] = (("Enter", "goes on", "None"),)
RECORDS: tuple[Answer, ...] = (
    ("Enter", "records this", "True"),
    ("Esc", "leaves it unrecorded", "False"),
)


class Page(ModalScreen[bool | None]):
    """A text that may be longer than the screen, and under it always the keys that leave it. Esc,
    Enter, F1, ? or q closes it."""

    CSS_PATH = "page.tcss"
    AUTO_FOCUS = "#words"
    BINDINGS = [
        Binding("escape,question_mark,f1,q,enter", "dismiss", "back"),
    ]

    def __init__(self, text: str, answers: Sequence[Answer] = CLOSES) -> None:
        super().__init__()
        self._text, self._answers = text, answers

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            with VerticalScroll(id="words") as text:
                width = min(76, self.app.size.width) - 7  # the box, its padding and a bar to scroll
                yield Static(Content(hang(in_words(self, self._text), width)))
            yield More(text, "Down, Page Down")
            yield Static(Content.from_markup("   ".join(map(_answer, self._answers))), id="answers")


def _answer(answer: Answer) -> str:
    """A key and what it does, also to be clicked; the words are ours."""
    key, word, left_with = answer
    return f"[@click=screen.dismiss({left_with})][b]{key}[/b] {word}[/]"


class Decide(Page, inherit_bindings=False):
    """A page that says what would be booked: Enter books it, Esc does not."""

    BINDINGS = [
        Binding("enter", "dismiss(True)", "book it"),
        Binding("escape", "dismiss(False)", "leave it"),
    ]

    def __init__(self, text: str, answers: Sequence[Answer] = RECORDS) -> None:
        super().__init__(text, answers)


def keys_of(screen_id: str, own: Own | None = None, without: Collection[str] = ()) -> str:
    """All keys of a screen, from the one command table, with a person's `own`; `without` those
    that would be refused just now."""
    known = (one for one in of(screen_id, own or {}) if one.id not in without)
    lines = [f"{command.keys:<12} {command.tip}" for command in known]
    named = [f"{one.word}: {one.tip[:1].lower()}{one.tip[1:]}" for one in BY_NAME]
    lines += ["", "By name, with : or Ctrl+P", "", *named]
    return "\n".join(["Keys", "", *lines, "", GUIDES, "", VERDICTS, "", LIMITS])
