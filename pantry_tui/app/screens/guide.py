"""Guides without a network: which one, then its page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import Choose, given
from pantry_tui.app.screens.page import Page, keys_of
from pantry_tui.services.lookup.guides import Guide, guides, sources_page

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

KEYS = "The keys of this screen"
#: How a line begins that is for those who type commands.
_NOT_HERE = ("On the command line:", "Without a screen:")


def choose_guide(host: Host) -> None:
    """A guide by its digit or by words that stand in it; the keys of the screen stand first."""
    here = str(getattr(host.screen, "here", "due"))
    known = {one.title: one for one in (*guides(), sources_page())}
    texts = {title: f"{title} {one.about} {one.text}" for title, one in known.items()}
    keys = keys_of(here, host.shown_keys, host.not_now)
    texts[KEYS] = f"{KEYS} {keys}"

    def show(title: str) -> None:
        text = keys if title == KEYS else page_of(known[title])
        host.push_screen(Page(text))

    question = Choose("Help: which guide? Letters find words in them.", [KEYS, *known], texts=texts)
    host.push_screen(question, given(show))


def page_of(one: Guide) -> str:
    """A guide as a page; who reads it here has keys, and needs no words of the command line."""
    lines = [line for line in one.text.split("\n") if not line.startswith(_NOT_HERE)]
    return "\n".join([one.title, one.about, "", *lines])
