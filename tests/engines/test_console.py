"""Pages give Firefox nothing to complain of: it tells of each fetch that their policy forbids."""

from __future__ import annotations

import pytest

from tests.browser.sampling import sampled
from tests.engines.engine import Engine

PLACES = ("checkers/readings/", "", "safety/", "limits/", "credits/", "log/")


@pytest.mark.only("firefox")
@pytest.mark.parametrize("place", sampled(PLACES, always=2))
def test_no_page_gives_anything_to_complain_of(engine: Engine, place: str) -> None:
    """Neither of what a page fetches, nor of what the browser would fetch ahead for it."""
    engine.open(place)
    engine.waits_for("performance.now() > 3000")  # what it fetches ahead, it does idle
    assert engine.complaints() == []


@pytest.mark.only("firefox")
def test_what_a_page_breaks_is_told(engine: Engine) -> None:
    """A fetch that the policy forbids, and an error that nobody catches."""
    engine.open("safety/")
    engine.complaints()
    engine.run("fetch('http://127.0.0.1:1/').catch(() => 0); setTimeout(() => nothing.there)")
    engine.waits_for("performance.now() > 1000")

    told = " ".join(engine.complaints())
    assert "connect-src" in told
    assert "nothing is not defined" in told
