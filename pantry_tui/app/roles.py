"""Roles of what is painted: a line says its role, a theme what that looks like. No textual here."""

from __future__ import annotations

from pantry_tui.core.words import Verdict

#: Roles that are no verdict: over what must go, over all else, beside the point of a line, a line
#: that is no stock.
DANGER, QUIET_HEAD, MUTED, HEAD = "danger", "part", "muted", "head"
#: The role of each verdict.
STYLE = {verdict: verdict.value for verdict in Verdict}
