"""Questions about a whole batch: how it was, and how it was put up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import Choose, TypeLine, ask_line, given
from pantry_tui.core.words import Rating
from pantry_tui.services.batchwork import sheet
from pantry_tui.services.batchwork.line import read_pairs
from pantry_tui.services.books import rating
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.correct import correct

if TYPE_CHECKING:
    from pantry_tui.app.screens.acts import Touches


def ask_rating(screen: Touches, ref: str) -> None:
    """By one key, then a note."""

    def note(said: str) -> None:
        ask_line(
            screen,
            f"{ref}, {said}: a note for next year, or none.",
            "less salt",
            lambda words: rating.taste(screen.host.pantry, ref, said, words),
            empty=True,
        )

    screen.host.push_screen(Choose(f"How was {ref}?", list(Rating)), given(note))


def ask_process(screen: Touches, ref: str) -> None:
    """In one line; an empty one asks field by field."""

    told: list[Done] = []

    def accept(words: str) -> None:
        if words:
            said = read_pairs(words)
            told.append(screen.host.doing(lambda: correct(screen.host.pantry, ref, process=said)))

    def answered(words: str) -> None:
        if words:
            screen.host.report(told[-1])  # on the screen itself: the question is gone now
            screen.settle_list()
            return
        from pantry_tui.app.screens.record import ask_fields

        ask_fields(screen, ref)

    title = f"How was {ref} put up? What you know of it; empty asks field by field."
    example = sheet.example(screen.host.pantry, ref)
    screen.host.push_screen(TypeLine(title, example, empty=True, accept=accept), given(answered))
