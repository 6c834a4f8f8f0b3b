"""What time it is for a household: the real clock, or the day a person asks about."""

from __future__ import annotations

import time as machine
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from pantry_tui.core.model import When

_DAY_MIN = 24 * 60


class Clock(NamedTuple):
    """`day` None: the real clock. `minute` is the minute of that day, None where only a day was
    named: then what is booked may have happened at any hour of it. `typed`: a person said so, as
    they say when something happened, and the clock of the computer may be right all the same."""

    day: date | None = None
    minute: int | None = None
    typed: bool = False

    @property
    def today(self) -> date:
        return self.day or real().date()

    @property
    def day_alone(self) -> bool:
        """Whether a day was named and no hour of it."""
        return self.day is not None and self.minute is None

    def gone_on(self, began: datetime) -> Clock:
        """This clock, which was told at the real moment `began`, as it is now: a moment goes on by
        minutes, a day that was named alone by days; the real one goes by itself."""
        if self.day is None:
            return self
        now = real()
        if self.minute is None:
            return self._replace(day=self.day + (now.date() - began.date()))
        passed = int((now - began).total_seconds()) // 60
        days, minute = divmod(self.minute + passed, _DAY_MIN)
        return self._replace(day=self.day + timedelta(days=days), minute=minute)

    @property
    def recorded(self) -> datetime:
        """The moment of writing, local, with its offset."""
        if self.day is None or self.minute is None:
            return real()
        then = datetime.combine(self.day, time(self.minute // 60, self.minute % 60))
        first, last = local_times(then)
        # An hour over which the clock was put on is the one that it showed then, on the same day.
        return first if first.replace(tzinfo=None) == then else last

    def told(self, day: date, minute: int, zone: int | None = None) -> tuple[datetime, ...]:
        """The moments that a local time of a day may mean, with the offset of that day and not of
        today: two where the clock was put back over it and `zone`, minutes ahead of Greenwich, does
        not say which; none where it was put on over it."""
        then = datetime.combine(day, time()) + timedelta(minutes=minute)
        return tuple(
            one
            for one in dict.fromkeys(local_times(then))
            if one.replace(tzinfo=None) == then and zone in (None, ahead(one))
        )

    @property
    def ticks(self) -> int:
        """How many seconds the computer has run since it was started, which no change of its clock
        moves; 0 of a clock that was told."""
        return running_for() if self.day is None else 0

    @property
    def minute_now(self) -> int:
        """The minute that it is, as `When` counts it; the last one of a day that was only named."""
        return self._now()[0]

    @property
    def now(self) -> When:
        """After this minute nothing has happened yet."""
        from pantry_tui.core.model import When

        then, zone = self._now()
        return When(then, then, self.today, zone)

    def _now(self) -> tuple[int, int]:
        real = self.recorded
        zone = ahead(real)
        minute = real.hour * 60 + real.minute
        if self.day_alone:
            minute = _DAY_MIN - 1
        return self.today.toordinal() * _DAY_MIN + minute - zone, zone


def local_times(then: datetime) -> tuple[datetime, datetime]:
    """The earliest and the latest moment that a local time may mean, with the offset of its day:
    the same one, but where the clock was put back over it, or on."""
    first, last = sorted(then.replace(fold=fold).astimezone() for fold in (0, 1))
    return first, last


def ahead(then: datetime) -> int:
    """How many minutes the clock of a moment is ahead of Greenwich."""
    gap = then.utcoffset()
    return int(gap.total_seconds() // 60) if gap is not None else 0


def running_for() -> int:
    """The seconds since the computer was started, its sleep among them where it counts that."""
    counter = getattr(machine, "CLOCK_BOOTTIME", None)
    return int(machine.monotonic() if counter is None else machine.clock_gettime(counter))


def real() -> datetime:
    """What the clock of the computer says."""
    return datetime.now(UTC).astimezone()
