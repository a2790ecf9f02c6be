"""Where Firefox blocks cookies and site data, or those of a foreign frame, the checkers run."""

from __future__ import annotations

import pytest

from tests.engines.engine import Engine
from tests.engines.test_core import CASE

# Firefox tells its console that it refuses a worker for the copy; the page tells it in words.
pytestmark = pytest.mark.allows("Failed to")

ALL_BLOCKED = {"network.cookie.cookieBehavior": 2}
FOREIGN_BLOCKED = {"network.cookie.cookieBehavior": 1}


@pytest.mark.first_visit
@pytest.mark.firefox_preferences(ALL_BLOCKED)
def test_the_checkers_run_where_nothing_may_be_kept(engine: Engine) -> None:
    """A verdict comes, and a changed value is judged anew."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")

    engine.types("410", "readings", "0", "value")

    engine.waits_for_outcome("fail")


@pytest.mark.first_visit
@pytest.mark.firefox_preferences(FOREIGN_BLOCKED)
def test_the_checkers_run_in_a_foreign_frame(engine: Engine) -> None:
    """As on a page of a school that shows a checker in its own."""
    address = (engine.host.address + CASE).replace("&", "&amp;")
    engine.driver.get(f'data:text/html,<iframe src="{address.replace("#", "%23")}"></iframe>')
    engine.driver.switch_to.frame(0)
    try:
        assert engine.run("try { localStorage; return 'there' } catch { return 'refused' }") == (
            "refused"
        )
        engine.waits_for_outcome("pass")
    finally:
        engine.driver.switch_to.default_content()
