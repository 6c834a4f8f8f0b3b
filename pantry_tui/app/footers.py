"""Which keys stand at the foot of each screen, as many as have room. No textual here."""

from __future__ import annotations

from collections.abc import Collection

from pantry_tui.app.commands import TABLE, Command, Own, of

#: What the key line of each screen shows, what is wanted most first; what has no room there is
#: behind `?`, which always stands there.
_ACTS = "use open thaw move discard sign give missing ready"
_LOOKS = "find jump detail putup undo mark"
_FOOTER = {
    "due": f"{_ACTS} {_LOOKS} backups guides household sort reserve rate process correct timer",
    "shelves": f"use open thaw move discard sign reading outage place picture {_LOOKS} backups "
    "guides give missing ready",
    "batch": f"{_ACTS} rate process correct timer reserve putup undo jump back",
    "picture": f"{_ACTS} aslist mark detail jump undo",
    "grid": "accept eaten later earlier swap skip pin eatout dish table aslist use open thaw "
    "detail undo jump backups guides",
    "months": "detail back find jump undo",
    "year": "detail aslist year find jump undo",
    "underway": "tended detail back find jump undo",
    "week": "accept eaten later earlier swap skip pin eatout dish table picture use open thaw "
    "detail undo backups guides jump find putup discard",
    "count": "agree digit book sign move uncount unlisted forget undo guides",
    "log": "detail correct find jump undo redo putup",
    "outlook": "detail whatif months picture year find jump putup undo",
    "import": "holds ignore order bring back undo",
    "putup": "books take lineup clear undo back guides",
}
#: What belongs to the whole app stands in every foot that has room for it.
_EVERYWHERE = "backups guides household"
#: And these fill the lines that there are.
_FILLS = "undo redo putup palette reckon methods jobs underway"
_LAST = ("help", "quit")

#: Cells that the key line has at 80 columns, and lines that it may take on a screen of 24.
ROOM, LINES = 78, 3


def footer(
    screen: str,
    room: int = ROOM,
    lines: int = LINES,
    own: Own = TABLE,
    without: Collection[str] = (),
) -> list[list[Command]]:
    """The lines of keys of a screen, each of at most `room` cells: what is wanted most that fits,
    then where all the others are, and leaving. `without`: what cannot be done just now."""
    known = {one.id: one for one in of(screen, own) if one.id not in (*without, screen)}
    typing = screen == "putup"  # where a question mark is typed
    last = [known[id_] for id_ in _LAST if not (typing and id_ == "help")]
    shown: list[Command] = []
    wanted = (known[id_] for id_ in f"{_FOOTER[screen]} {_EVERYWHERE}".split() if id_ in known)
    for one in wanted:
        if one not in shown and _laid_out([*shown, one, *last], screen, room, lines):
            shown.append(one)
    taken = len(_laid_out([*shown, *last], screen, room, lines) or ())
    for one in (known[id_] for id_ in _FILLS.split() if id_ in known):
        if one not in shown and _laid_out([*shown, one, *last], screen, room, taken):
            shown.append(one)
    return _laid_out([*shown, *last], screen, room, lines) or [last]


def _laid_out(
    commands: list[Command], screen: str, room: int, lines: int
) -> list[list[Command]] | None:
    """In lines of at most `room` cells; None where they need more lines."""
    found: list[list[Command]] = [[]]
    used = 0
    for one in commands:
        wide = len(f"{one.typed(screen)} {one.word}")
        if found[-1] and used + 2 + wide > room:
            found.append([])
            used = 0
        used += wide + (2 if found[-1] else 0)
        found[-1].append(one)
    return found if len(found) <= lines else None
