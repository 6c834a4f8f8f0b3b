"""A text as the household of the app measures, and in the app's keys; for what is painted and knows
only its app."""

from __future__ import annotations

from textual.message_pump import MessagePump


def in_units(there: MessagePump, text: str, *names: str) -> str:
    """`text` in the units of the household; `names`, what was typed, stay as they are."""
    units = getattr(there.app, "units", None)
    return text if units is None else str(units.text(text, *names))


def contents_in_units(there: MessagePump, text: str) -> str:
    """The same of a cell that says what is left: "38 lb"."""
    units = getattr(there.app, "units", None)
    return text if units is None else str(units.contents(text))


def in_words(there: MessagePump, text: str) -> str:
    """A whole text of a service: in the household's units, and what it names of the command line
    in keys."""
    said = getattr(there.app, "said", None)
    return text if said is None else str(said(text))
