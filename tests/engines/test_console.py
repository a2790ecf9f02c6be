"""Pages give Firefox nothing to complain of: it tells of each fetch that their policy forbids."""

from __future__ import annotations

import pytest

from tests.engines.firefox import Firefox

COMPLAINTS = """
const path = arguments[0];
return Services.console.getMessageArray()
  .filter((one) => one instanceof Ci.nsIScriptError && one.sourceName.includes(path))
  .map((one) => one.errorMessage)
"""
PLACES = ("", "safety/", "limits/", "checkers/readings/", "credits/", "log/")


@pytest.mark.only("firefox")
@pytest.mark.parametrize("place", PLACES)
def test_a_page_gives_nothing_to_complain_of(engine: Firefox, place: str) -> None:
    """Neither of what a page fetches, nor of what the browser would fetch ahead for it."""
    engine.run_inside("Services.console.reset()")
    engine.open(place)
    engine.waits_for("return document.readyState === 'complete'", 30)
    engine.waits_for("return performance.now() > 3000", 30)  # what it fetches ahead, it does idle

    assert engine.run_inside(COMPLAINTS, "/some/where/") == []
