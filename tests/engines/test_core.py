"""What the site is for works in Firefox and WebKit as it does in the browser it was made in."""

from __future__ import annotations

from typing import Any

import pytest

from build_tools.pages.macros.checkers import fragment
from checkers import run
from checkers.catalogue import CHECKERS
from tests.browser.practice.practising import Case
from tests.engines.engine import Engine

CASE = (
    "checkers/readings/#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28"
)
BOARD = "Device;RCD;IΔn (mA);x1 (ms)\n1 Sockets;RCBO A;30;28,5\n2 Kitchen;RCBO A;30;410\n"
EXAMPLES = {one.slug: dict(one.examples[0].request) for one in CHECKERS}
RESULT = ".md-search-result__item > .md-search-result__link"


def test_a_visit_to_the_checkers(engine: Engine) -> None:
    """Readings are judged as they are typed, kept and found in the log; the search finds a page.

    At its rating a device of 30 mA has 300 ms (IEC 61008-1, table 1): 28 pass and 410 fail.
    """
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.types("410", "readings", "0", "value")
    engine.waits_for_outcome("fail")
    engine.keeps(device="Way 7")

    engine.walks("log/")
    engine.waits_for_text("Way 7", "[data-list]")
    engine.reloads()
    engine.waits_for_text("Way 7", "[data-list]")

    engine.click(".md-header__button[for='__search']")
    engine.find(".md-search__input").send_keys("wallbox")
    near = f"Array.from(document.querySelectorAll('{RESULT}')).slice(0, 4)"
    engine.waits_for(f"{near}.some((one) => one.href.includes('dc-sources/ev-charge-point/'))")


def test_a_case_opened_while_another_is_written_is_not_written_over(engine: Engine) -> None:
    """A write that was due comes before the browser tells of the new address."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")

    engine.run(
        "location.hash = arguments[0]; dispatchEvent(new Event('pagehide'))",
        CASE.partition("#")[2].replace("value=28", "value=410"),
    )

    engine.waits_for_outcome("fail")


@pytest.mark.slow_in("webkit")
def test_the_other_checkers_answer_as_on_the_command_line(engine: Engine) -> None:
    """A weighing, an arrangement, a schedule and a case for practice, from one start."""
    engine.open("checkers/schedule/")
    engine.waits_for_outcome("unfinished")
    engine.pastes(BOARD, "[data-text]")
    engine.waits_for_outcome("fail")
    engine.waits_for_text("Devices: 1 fail, 1 pass so far", "[data-results]")
    engine.waits_for_text("Line 3: 2 Kitchen", "[data-results] [data-first]")

    for slug in ("explain", "series"):
        reply: dict[str, Any] = run(slug, EXAMPLES[slug])
        engine.walks(f"checkers/{slug}/#{fragment(EXAMPLES[slug])}")
        engine.waits_for_text(reply["findings"][0]["says"], "[data-results]")
        engine.waits_for_outcome(reply["outcome"])
    engine.waits_for("document.querySelector('figure.tree svg').getBBox().height > 50")

    case = Case(1, 4)
    engine.walks(case.address)
    (shown,) = case.readings()
    engine.waits_for_text(shown, "[data-readings]")
    engine.click(f"[data-step=limits] [data-answer={case.limits()}]")
    engine.waits_for_text("Limits: right at once", "[data-end]")
