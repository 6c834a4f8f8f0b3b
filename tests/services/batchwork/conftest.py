"""What the tests of putting food up share."""

from __future__ import annotations

import pytest

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places


@pytest.fixture
def chilled(larder: Pantry) -> Pantry:
    """A larder and a fridge, with a freezer and a cellar beside them."""
    for name in ("freezer", "cellar"):
        places.add(larder, name, name)
    return larder
