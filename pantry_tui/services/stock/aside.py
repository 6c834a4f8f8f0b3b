"""What is said beside the log can be taken back like what is in it: the week's wishes and plan, who
sits at the table, ceilings. Nothing of it is an event, since it says nothing of the stock.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any, Concatenate, ParamSpec

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import weekdraft
from pantry_tui.services.rows import Done

_NAME = "asides"
#: So many can be taken back.
_KEPT = 20
_P = ParamSpec("_P")


def aside(do: Callable[Concatenate[Pantry, _P], Done]) -> Callable[Concatenate[Pantry, _P], Done]:
    """Remembers what stood before `do`, which says what it did."""

    @wraps(do)
    def doing(p: Pantry, /, *args: _P.args, **named: _P.kwargs) -> Done:
        week, settings = weekdraft.kept(p), p.settings()
        done = do(p, *args, **named)
        after = p.settings()
        changed = {
            name: settings.get(name)
            for name in (*settings, *after)
            if settings.get(name) != after.get(name)
        }
        if changed or weekdraft.kept(p) != week:
            words = done.message.partition(";")[0].rstrip(".")
            one = {"after": _last(p), "said": words, "week": week, "settings": changed}
            p.store.keep_draft(_NAME, {"said": [*_asides(p), one][-_KEPT:]})
        return done

    return doing


def take_back(p: Pantry) -> Done | None:
    """Undoes the last of these, if nothing was booked since that still stands."""
    said = _asides(p)
    if not said or said[-1]["after"] != _last(p):
        return None
    one = said[-1]
    weekdraft.restore(p, one["week"])
    p.save(one["settings"])
    p.store.keep_draft(_NAME, {"said": said[:-1]})
    return Done(f"Took back: {one['said']}.")


def _asides(p: Pantry) -> list[dict[str, Any]]:
    kept = p.store.draft(_NAME)
    return list(kept["said"]) if kept else []


def _last(p: Pantry) -> str:
    last = p.last_standing()
    return last.id if last else ""
