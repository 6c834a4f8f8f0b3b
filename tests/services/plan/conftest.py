"""A household of two."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import set_people


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    """A store with a larder and a fridge, for two; where a test needs others it has its own."""
    set_people(larder, 2)
    return larder
