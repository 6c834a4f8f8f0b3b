"""A pilot waits until every key is done, as a person who looks at the screen does."""

from __future__ import annotations

import pytest
from textual.pilot import Pilot

from pantry_tui.app.inturn import InTurn


@pytest.fixture(autouse=True)
def patient_pilot(monkeypatch: pytest.MonkeyPatch) -> None:
    wait = Pilot._wait_for_screen

    async def patient(pilot: Pilot[None], timeout: float = 30.0) -> bool:
        done = await wait(pilot, timeout)
        while done and isinstance(pilot.app, InTurn) and not pilot.app.idle:
            if pilot.app._exit:  # no key is waited for by an app that was left
                break
            done = await wait(pilot, timeout)
        return done

    monkeypatch.setattr(Pilot, "_wait_for_screen", patient)
