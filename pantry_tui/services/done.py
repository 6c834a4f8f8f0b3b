"""What every act answers. Apart from the other answers, since each day-to-day act loads it."""

from __future__ import annotations

from pantry_tui.core.dataclass import dataclass


@dataclass(frozen=True, slots=True)
class Done:
    """The answer to an action: one plain sentence, and what else should be known."""

    message: str
    warnings: tuple[str, ...] = ()
    containers: tuple[str, ...] = ()
