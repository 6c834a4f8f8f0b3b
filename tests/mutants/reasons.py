"""Faults that no test can notice, and why: they change nothing that anybody could see.

(file, function, before, after) as `python -m tests.mutants` prints them -> the reason. A fault
with a reason counts as noticed; a reason for one that is no longer made is named by the run.
"""

from __future__ import annotations

_LOG, _KEEPING = "pantry_tui/core/log/", "pantry_tui/core/keeping/"
_SAFETY = "pantry_tui/core/safety/"
_NUMBERED = "container = Container('', '',"
_IN_PLACE = ", state, place.id, (Turn(now, '', place. ..."

REASONS: dict[tuple[str, str, str, str], str] = {
    **dict.fromkeys(
        [
            (
                _LOG + "climates.py",
                "_before",
                "...  moments[i].last < mine.first), default=0)",
                f"...  moments[i].last < mine.first), default={other})",
            )
            for other in ("1", "-1")
        ],
        "no household books anything in the first minute of the calendar",
    ),
    **dict.fromkeys(
        [
            (_KEEPING + "weather.py", "", "FOREVER = 1 << 40", "FOREVER = 2 << 40"),
            (_KEEPING + "weather.py", "", "FOREVER = 1 << 40", "FOREVER = 1 << 41"),
        ],
        "no calendar reaches either end",
    ),
    **dict.fromkeys(
        [
            (_KEEPING + "weather.py", "OfFacts", "_MOST = 2048", f"_MOST = {other}")
            for other in ("2049", "2047")
        ],
        "how many are kept at a time changes no answer",
    ),
    (
        _KEEPING + "weather.py",
        "_ends",
        "soonest = [FOREVER] * (len(changes) + 1)",
        "soonest = [FOREVER] * (len(changes) + 2)",
    ): "nobody looks behind the last",
    (
        _KEEPING + "walk.py",
        "Walk.spans_of",
        "bare = start if _unfrozen(shape) else -1",
        "bare = start if _unfrozen(shape) else 1",
    ): "no household books anything in the first minutes of the calendar",
    (
        _KEEPING + "warmth.py",
        "_dried",
        "if warm > hot_f:",
        "if warm >= hot_f:",
    ): "at that temperature itself its own figure was given before",
    (
        _KEEPING + "walk.py",
        "Walk._product",
        "kinds = dict.fromkeys((turn._replace(event='') for turn in group))",
        "kinds = dict.fromkeys((turn._replace() for turn in group))",
    ): "the same act twice leads nowhere that it does not lead to once; it only takes longer",
    (
        _KEEPING + "walk.py",
        "_order",
        "... pan[:9], span.thawed or date.max, *span[10:])",
        "... pan[:9], span.thawed or date.max, *span[9:])",
    ): "what is alike so far is alike in the day it was thawed too",
    **dict.fromkeys(
        [
            (
                _KEEPING + "unripe.py",
                "",
                "_SOME_DAY = date(2000, 1, 1)",
                f"_SOME_DAY = date({other})",
            )
            for other in ("2001, 1, 1", "1999, 1, 1", "2000, 2, 1", "2000, 1, 2")
        ],
        "only whether anything is published is asked of that day, never how long",
    ),
    (
        _KEEPING + "unripe.py",
        "unripe",
        "done = min(after, key=lambda span: span.start, default=None) if working else None",
        "done = min(after, default=None) if working else None",
    ): "a span begins with its start, and those that begin together begin on one day",
    (_KEEPING + "rotation.py", "_last", "return 3", "return 4"): (
        "these numbers are only compared with one another"
    ),
    (
        _KEEPING + "exposure.py",
        "",
        "_SOON_AFTER = When(1, 1, date.min)",
        "_SOON_AFTER = When(1, 2, date.min)",
    ): "no household books anything in the first minutes of the calendar",
    **dict.fromkeys(
        [
            (
                _KEEPING + "limits.py",
                "judge_fresh",
                f"{_NUMBERED} 1{_IN_PLACE}",
                f"{_NUMBERED} {other}{_IN_PLACE}",
            )
            for other in ("2", "0")
        ],
        "the number on a lid says nothing of what is in it",
    ),
    (
        _KEEPING + "limits.py",
        "judge_fresh",
        "minute = day.toordinal() * DAY_MIN",
        "minute = day.toordinal() / DAY_MIN",
    ): "made today it has no other minute to be compared with: the day alone counts",
    (
        _KEEPING + "limits.py",
        "_weigh",
        "in_progress = any((span.in_progress for span in here))",
        "in_progress = all((span.in_progress for span in here))",
    ): "by every way that it may have gone it is ready now, or by none",
    (
        _KEEPING + "limits.py",
        "_facts_to",
        "... e fact.when.day for fact in place.facts[-1:]]",
        "... e fact.when.day for fact in place.facts[1:]]",
    ): "the facts of a place are in the order of their moments, so the last one is the latest",
    **dict.fromkeys(
        [
            (
                _SAFETY + "outage.py",
                "_triage",
                "rank = 10 * first.index(action) + _perishing(food ...",
                f"rank = {other} * first.index(action) + _perishing(food ...",
            )
            for other in ("11", "9")
        ],
        "ranks are only compared with one another, and there are seven of an action",
    ),
    (_SAFETY + "values.py", "_all_of", "return words <= known", "return words < known"): (
        "nobody types every word that is known"
    ),
    (
        _SAFETY + "process.py",
        "_too_little",
        "done = pair(minutes, psi if rows[0].psi else None)",
        "done = pair(minutes, psi if rows[-1].psi else None)",
    ): "the rows are of canners with a pressure, or of none",
}
