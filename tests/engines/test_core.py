"""What the site is for works in Firefox and WebKit as it does in the browser it was made in."""

from __future__ import annotations

from typing import Any

import pytest

from build_tools.checker_shows import fragment
from checkers import run
from checkers.catalogue import CHECKERS
from tests.browser.practising import Case
from tests.engines.engine import Engine

CASE = (
    "checkers/readings/#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28"
)
BOARD = "Device;RCD;IΔn (mA);x1 (ms)\n1 Sockets;RCBO A;30;28,5\n2 Kitchen;RCBO A;30;410\n"
EXAMPLES = {one.slug: dict(one.examples[0].request) for one in CHECKERS}
RESULT = ".md-search-result__item > .md-search-result__link"


def test_readings_typed_pass_and_fail(engine: Engine) -> None:
    """At its rating a device of 30 mA has 300 ms (IEC 61008-1, table 1): 28 pass and 410 fail."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.types("410", "readings", "0", "value")
    engine.waits_for_outcome("fail")
    engine.types("28", "readings", "0", "value")
    engine.waits_for_outcome("pass")


@pytest.mark.parametrize("slug", ["explain", "series"])
def test_a_checker_answers_as_on_the_command_line(engine: Engine, slug: str) -> None:
    """What a long weighing and an arrangement come to is shown in the same words."""
    reply: dict[str, Any] = run(slug, EXAMPLES[slug])
    engine.open(f"checkers/{slug}/#{fragment(EXAMPLES[slug])}")
    engine.waits_for_outcome(reply["outcome"])

    engine.waits_for_text(reply["findings"][0]["says"], "[data-results]")
    if slug == "series":
        engine.waits_for("document.querySelector('figure.tree svg').getBBox().height > 50")


def test_a_pasted_schedule_is_judged(engine: Engine) -> None:
    """The rows are counted by what each comes to."""
    engine.open("checkers/schedule/")
    engine.waits_for_outcome("unfinished")
    engine.pastes(BOARD, "[data-text]")
    engine.waits_for_outcome("fail")

    engine.waits_for_text("Devices: 1 fail, 1 pass so far", "[data-results]")
    engine.waits_for_text("Line 3: 2 Kitchen", "[data-results] [data-first]")


def test_a_case_for_practice_is_played_through(engine: Engine) -> None:
    """A right answer to the only question of an easy case ends it."""
    case = Case(1, 4)
    engine.open(case.address)
    (shown,) = case.readings()
    engine.waits_for_text(shown, "[data-readings]")
    engine.click(f"[data-step=limits] [data-answer={case.limits()}]")

    engine.waits_for_text("Limits: right at once", "[data-end]")


def test_a_verdict_that_is_kept_stays(engine: Engine) -> None:
    """It is in the log, with its label, also after the page is opened anew."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.keeps(device="Way 7")
    engine.open("log/")
    engine.waits_for_text("Way 7", "[data-list]")

    engine.reloads()

    engine.waits_for_text("Way 7", "[data-list]")


def test_the_search_finds_what_is_typed(engine: Engine) -> None:
    """A word that people use leads to the page that has it under another name."""
    engine.open("safety/")
    engine.waits_for("globalThis.location$ !== undefined || document.readyState === 'complete'")
    engine.click(".md-header__button[for='__search']")
    engine.find(".md-search__input").send_keys("wallbox")

    found = f"Array.from(document.querySelectorAll('{RESULT}')).slice(0, 4)"
    engine.waits_for(f"{found}.some((one) => one.href.includes('dc-sources/ev-charge-point/'))")
