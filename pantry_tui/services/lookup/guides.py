"""Short guides, as files of data/guides: the first line is the title, the second what it is about.

They are read when somebody asks for help, and need no store.
"""

from __future__ import annotations

from dataclasses import dataclass

from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput
from pantry_tui.paths import data_dir
from pantry_tui.reference.tables import load_tables

#: In the order in which help lists them.
ORDER = (
    "first-evening",
    "stock-check",
    "power-cut",
    "suspect-jar",
    "planning-the-winter",
    "glut-of-beans",
    "your-own-list",
)
SOURCES = "sources"


@dataclass(frozen=True, slots=True)
class Guide:
    """One guide; `topic` is what a person types."""

    topic: str
    title: str
    about: str
    text: str


def guides() -> list[Guide]:
    """All of them, in the order of help."""
    return [_read(topic) for topic in ORDER]


def guide(words: str) -> Guide:
    """The guide that the words name, else the only one that holds all of them. Raises BadInput
    naming the guides."""
    wanted = clean(words).casefold().replace("-", " ")
    known = [*guides(), sources_page()]
    for one in known:
        if wanted in (one.topic.replace("-", " "), one.title.casefold()):
            return one
    titled = [one for one in known if _holds(f"{one.topic} {one.title}", wanted)]
    found = titled or [one for one in known if _holds(f"{one.about} {one.text}", wanted)]
    if len(found) != 1:
        near = ", ".join(one.topic for one in found or known)
        raise BadInput(f"{clean(words)[:40]!r} names no one guide: write help and one of {near}.")
    return found[0]


def sources_page() -> Guide:
    """The publications behind the figures, each with its address where one is known and how it
    was seen."""
    lines = [
        f"{one}{f': {one.url}' if one.url else ''}{f' ({one.note})' if one.note else ''}"
        for one in sorted(load_tables().sources.values(), key=str)
    ]
    return Guide(
        SOURCES,
        "The sources",
        "Every publication that a figure names, with its address and how it was seen.",
        "\n".join(lines),
    )


def _holds(text: str, wanted: str) -> bool:
    plain = text.casefold().replace("-", " ")
    return all(word in plain for word in wanted.split())


def _read(topic: str) -> Guide:
    title, about, *rest = (
        (data_dir() / "guides" / f"{topic}.txt").read_text(encoding="utf-8").splitlines()
    )
    return Guide(topic, title, about, "\n".join(rest).strip())
