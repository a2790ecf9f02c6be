"""What is kept in the job log is there, in engines that ask, keep apart or clear what they hold."""

from __future__ import annotations

import pytest

from tests.browser.log.job_log import SOUND
from tests.engines.engine import PATIENCE, Engine
from tests.engines.firefox import Firefox

QUESTION = "return Boolean(PopupNotifications.getNotification('persistent-storage'))"
ALIVE = "document.querySelector('[data-keep] [data-alive]')"
LABEL = """
const box = document.querySelector(`[data-keep] [name=${arguments[0]}]`);
box.value = arguments[1];
box.dispatchEvent(new Event("input", { bubbles: true }));
"""
TOLD = "[data-keep] [data-told]"
WARNING = "[data-keep] [data-warning]"


def passes(engine: Engine) -> None:
    """Wait for the verdict as long as a start in a frame may take on a machine under load."""
    engine.waits_for("document.querySelector('[data-verdict][data-outcome=pass]')", 3 * PATIENCE)


def fills(engine: Engine, **labels: str) -> None:
    """Open the panel under a form and fill it."""
    engine.click("[data-keep] > summary")
    engine.waits_for(ALIVE)
    for name, text in labels.items():
        engine.run(LABEL, name, text)


def keeps(engine: Engine) -> None:
    """Keep the verdict that stands, and wait until that is said."""
    engine.click("[data-keep] form button")
    engine.waits_for_text("Kept", TOLD)


@pytest.mark.slow_in("webkit")
def test_kept_goes_with_the_case_it_was_said_of(engine: Engine) -> None:
    """Another value and another label each take the word away."""
    engine.open(SOUND)
    passes(engine)
    fills(engine, job="Farm shop", device="Way 3")
    keeps(engine)
    engine.types("410 ms", "readings", "0", "value")
    engine.waits_for_outcome("fail")
    assert engine.text(TOLD) == ""

    keeps(engine)
    engine.run(LABEL, "device", "Way 4")
    assert engine.text(TOLD) == ""


@pytest.mark.only("firefox")
def test_what_is_kept_under_a_standing_question_is_there_after_a_restart(engine: Firefox) -> None:
    """While Firefox asks whether the site may store for long, two verdicts are kept, for good."""
    engine.open(SOUND)
    passes(engine)
    fills(engine, job="Farm shop", device="Way 3")
    keeps(engine)
    for _ in range(100):
        if engine.run_inside(QUESTION):
            break
    assert engine.run_inside(QUESTION), "Firefox has not asked"
    engine.types("410 ms", "readings", "0", "value")
    engine.waits_for_outcome("fail")
    engine.run(LABEL, "device", "Way 4")
    keeps(engine)
    assert engine.run_inside(QUESTION), "the question does not stand any longer"

    engine.restarts()
    engine.open("log/")
    engine.waits_for("document.querySelector('[data-log][data-ready]')")
    listed = engine.text("[data-list]")
    assert "Way 3" in listed
    assert "Way 4" in listed


@pytest.mark.only("firefox")  # WebKit, driven, shows no frame of a page of data
def test_a_frame_says_that_it_keeps_apart(engine: Engine) -> None:
    """Inside another site's page the warning says so, and leads to the page by itself."""
    address = (engine.host.address + SOUND).replace("&", "&amp;").replace("#", "%23")
    engine.driver.get(f'data:text/html,<iframe width="400" height="800" src="{address}"></iframe>')
    engine.driver.switch_to.frame(0)
    passes(engine)
    fills(engine)
    warning = engine.text(WARNING)
    link = engine.run("return document.querySelector('[data-keep] [data-warning] a').href")
    engine.driver.switch_to.default_content()

    assert link.partition("#")[0] == engine.host.address + SOUND.partition("#")[0]
    assert "shown inside a page of another site" in warning
    assert "apart from the job log of this site" in warning


def test_seven_days_are_told_where_they_hold(engine: Engine) -> None:
    """WebKit deletes what a site keeps when it is not visited; the reader hears it there alone."""
    engine.open(SOUND)
    passes(engine)
    fills(engine)

    assert ("seven days" in engine.text(WARNING)) == (engine.name == "webkit")
    assert ("Home Screen" in engine.text(WARNING)) == (engine.name == "webkit")
