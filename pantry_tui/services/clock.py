"""What time it is for a household: the real clock, or the day a person asks about."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time

from pantry_tui.core.model import DAY_MIN, When


@dataclass(frozen=True, slots=True)
class Clock:
    """`day` None: the real clock. `minute` is the minute of that day, None where only a day was
    named: then what is booked may have happened at any hour of it."""

    day: date | None = None
    minute: int | None = None

    @property
    def today(self) -> date:
        return self.day or self._real().date()

    @property
    def recorded(self) -> datetime:
        """The moment of writing, local, with its offset."""
        if self.day is None or self.minute is None:
            return self._real()
        named = datetime.combine(self.day, time(self.minute // 60, self.minute % 60))
        return named.astimezone()

    @property
    def now(self) -> When:
        """After this minute nothing has happened yet; the end of a day that was only named."""
        real = self.recorded
        gap = real.utcoffset()
        offset = int(gap.total_seconds() // 60) if gap is not None else 0
        minute = real.hour * 60 + real.minute
        if self.day is not None and self.minute is None:
            minute = DAY_MIN - 1
        then = self.today.toordinal() * DAY_MIN + minute - offset
        return When(then, then, self.today, offset)

    @property
    def now_local(self) -> datetime:
        """The same minute as people say it."""
        minute = self.now.first + self.now.zone - self.today.toordinal() * DAY_MIN
        return datetime.combine(self.today, time(minute // 60, minute % 60)).astimezone()

    @staticmethod
    def _real() -> datetime:
        return datetime.now(UTC).astimezone()
