"""What an import brought."""

from __future__ import annotations

from typing import Any

from pantry_tui.services.output.jsonable import plain
from pantry_tui.services.safekeeping.telling import merged as merged
from pantry_tui.services.safekeeping.transfer import Merged


def data(found: Merged) -> dict[str, Any]:
    """Also `bad` and `asks`, as every import answers; a log has neither."""
    return {**plain(found), "bad": [], "asks": []}
