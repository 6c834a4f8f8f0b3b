"""Faults that no test can notice, and why: they change nothing that anybody could see.

(file, function, before, after) as `python -m tests.mutants` prints them -> the reason. A fault
with a reason counts as noticed; a reason for one that is no longer made is named by the run.
"""

from __future__ import annotations

_LOG, _KEEPING = "pantry_tui/core/log/", "pantry_tui/core/keeping/"

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
    (_KEEPING + "rotation.py", "_last", "return 3", "return 4"): (
        "these numbers are only compared with one another"
    ),
}
