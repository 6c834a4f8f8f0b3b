"""Faults that no test can notice, and why: they change nothing that anybody could see.

(file, function, before, after) as `python -m tests.mutants` prints them -> the reason. A fault
with a reason counts as noticed; a reason for one that is no longer made is named by the run.
"""

from __future__ import annotations

REASONS: dict[tuple[str, str, str, str], str] = {}
