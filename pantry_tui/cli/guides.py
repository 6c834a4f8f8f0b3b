"""Guides that need no store and no network."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import maybe_words
from pantry_tui.cli.verb import Verb
from pantry_tui.services.lookup.guides import Guide, guide, guides
from pantry_tui.services.output import jsonable


class Help(Verb):
    topic: str = maybe_words("a guide, or words that stand in one; without: which there are")

    def run(self, call: Call) -> int:
        if self.topic:
            return call.answer([guide(self.topic)], jsonable.plain, _whole)
        return call.answer(guides(), jsonable.plain, _listed)


def _whole(found: list[Guide]) -> list[str]:
    return [line for one in found for line in (one.title, one.about, "", *one.text.split("\n"))]


def _listed(found: list[Guide]) -> list[str]:
    rows = [f"  {one.topic:<20} {one.about}" for one in found]
    return [
        "Guides, each by `pantry-tui help TOPIC`:",
        "",
        *rows,
        "  sources              Every publication that a figure names, with its address.",
        "",
        "All verbs: pantry-tui --help. One verb: pantry-tui VERB --help.",
    ]
