"""The verdict follows what is typed, from Python in a worker, without a button."""

from __future__ import annotations

import pytest
from playwright.sync_api import Route, expect

from tests.browser.phone import PATIENCE, Phone

CHECKER = "checkers/readings/"
DEVICE = "#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
AT_ONE = "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"


def test_the_verdict_follows_each_keystroke(phone: Phone) -> None:
    """A time typed digit by digit passes at 28 ms and fails at 2800 ms, with nothing pressed."""
    phone.open(CHECKER + DEVICE + AT_ONE)
    phone.waits_for("unfinished")

    phone.types("28", "readings", "0", "value")
    phone.waits_for("pass")
    expect(phone.verdict).to_contain_text("Pass")

    phone.field("readings", "0", "value").locator("input").press_sequentially("00")
    phone.waits_for("fail")
    expect(phone.verdict).to_contain_text("Fail")


def test_what_is_missing_is_named_and_not_marked_as_wrong(phone: Phone) -> None:
    """An empty form is no mistake: the bar says what is still needed."""
    phone.open(CHECKER)
    phone.waits_for("unfinished")

    expect(phone.verdict).to_contain_text("Still needed: Readings")
    expect(phone.page.locator("[aria-invalid]")).to_have_count(0)


def test_a_bad_field_is_marked_at_the_field(phone: Phone) -> None:
    """A text that is no reading is named where it stands, and tied to its input."""
    phone.open(CHECKER + DEVICE + AT_ONE)
    phone.types("hello", "readings", "0", "value")
    phone.waits_for("unfinished")

    field = phone.field("readings", "0", "value")
    expect(field.locator("[data-problem]")).to_be_visible()
    expect(field.locator("input")).to_have_attribute("aria-invalid", "true")
    problem = field.locator("[data-problem]").get_attribute("id")
    assert problem in (field.locator("input").get_attribute("aria-describedby") or "").split()

    phone.types("28", "readings", "0", "value")
    phone.waits_for("pass")
    expect(field.locator("[data-problem]")).to_be_hidden()


@pytest.mark.first_visit
def test_what_is_typed_before_python_runs_is_kept(phone: Phone) -> None:
    """While the runtime is on its way the page says so, takes the typing, and then judges it."""
    held: list[Route] = []
    phone.page.route("**/*.wasm", lambda route: held.append(route))  # noqa: PLW0108  # a list takes no mark
    phone.open(CHECKER + DEVICE + AT_ONE)
    expect(phone.verdict).to_contain_text("Fetching the checkers")
    expect(phone.verdict).to_contain_text("MB")
    expect(phone.page.locator("[data-progress]")).to_be_visible()

    phone.types("28", "readings", "0", "value")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("28")
    held[0].continue_()

    phone.waits_for("pass")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("28")


def test_only_the_newest_answer_is_shown(phone: Phone) -> None:
    """However fast one types, the verdict that stays belongs to the text that stands."""
    phone.open(CHECKER + DEVICE + AT_ONE)
    phone.waits_for("unfinished")
    box = phone.field("readings", "0", "value").locator("input")
    for _ in range(6):
        box.fill("2800")
        box.fill("28")

    phone.waits_for("pass")
    phone.page.wait_for_timeout(300)
    expect(phone.verdict).to_have_attribute("data-outcome", "pass")


def test_a_finding_says_what_why_and_from_where(phone: Phone) -> None:
    """Each finding has its word, its shape, the figures, a sentence, the next step and sources."""
    phone.open(CHECKER + DEVICE + AT_ONE + "&readings.0.value=400+ms")
    phone.waits_for("fail")
    finding = phone.results.locator('.finding[data-outcome="fail"]').first

    expect(finding).to_contain_text("Fail")
    expect(finding.locator("svg.shape--fail")).to_have_count(1)
    expect(finding).to_contain_text("400 ms")
    expect(finding).to_contain_text("Limit")
    expect(finding).to_contain_text("Next:")
    finding.locator("summary").click()
    expect(finding.locator(".sources li").first).to_contain_text("(")
    expect(phone.results).to_contain_text("BS 7671 and the law on electrical work decide")


def test_readings_can_be_added_and_taken_away(phone: Phone) -> None:
    """A second reading that fails brings the whole down; without it the first one passes."""
    phone.open(CHECKER + DEVICE + AT_ONE + "&readings.0.value=28")
    phone.waits_for("pass")

    phone.page.locator("[data-add]").click()
    phone.chooses("ramp", "readings", "1", "test")
    phone.chooses("ac", "readings", "1", "waveform")
    phone.types("45 mA", "readings", "1", "value")
    phone.waits_for("fail")

    phone.page.locator("[data-entry]").nth(1).locator("[data-remove]").click()
    phone.waits_for("pass")


def test_a_suggested_value_is_one_tap(phone: Phone) -> None:
    """The usual ratings stand under the field and fill it."""
    phone.open(CHECKER + AT_ONE.replace("&", "#", 1) + "&readings.0.value=28")
    phone.waits_until_running()

    phone.page.get_by_role("button", name="Rated residual current: 30 mA").click()

    box = phone.field("device", "rated_residual_current").locator("input")
    expect(box).to_have_value("30 mA")
    phone.page.locator('[data-verdict]:not([data-outcome="unfinished"])').wait_for(timeout=PATIENCE)
