"""A day far from the day of the build is remarked beside the verdict, which stays what it is."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from build_tools.files.identity import day_of_sources
from tests.browser.host import Host
from tests.browser.log.job_log import CHECKER, DEVICE, READING
from tests.browser.phone import PHONE, Phone

BUILT = day_of_sources()
SOUND = f"{CHECKER}{DEVICE}{READING}&readings.0.value=28+ms".replace("&on=2026-11-24", "")


def _remark(page: Page) -> Locator:
    return page.locator("[data-far-day]")


# The clock of the tests is that of a whole phone: these take one of their own.
OF_ITS_OWN = pytest.mark.first_visit


def _clock(page: Page, day: str) -> None:
    page.clock.set_fixed_time(f"{day}T12:00:00")


@OF_ITS_OWN
def test_a_clock_ten_years_on_is_remarked_and_the_verdict_stays(phone: Phone, page: Page) -> None:
    """The remark names both days and says what to do; the bar says what Python answered."""
    _clock(page, f"{BUILT.year + 10}-05-05")
    phone.open(SOUND)

    phone.waits_for("pass")
    expect(_remark(page)).to_be_visible()
    expect(_remark(page)).to_contain_text(f"clock says 5 May {BUILT.year + 10}")
    expect(_remark(page)).to_contain_text(f"built, on {BUILT.day} {BUILT:%B %Y}")
    expect(_remark(page)).to_contain_text("check the clock")


@OF_ITS_OWN
@pytest.mark.parametrize("place", [SOUND, "checkers/schedule/", "checkers/practice/"])
def test_a_clock_before_the_build_is_remarked(phone: Phone, page: Page, place: str) -> None:
    """The copy cannot be younger than the day it is used on: the clock is wrong."""
    _clock(page, "2001-05-05")
    phone.open(place)

    expect(_remark(page)).to_contain_text("clock says 5 May 2001")
    expect(_remark(page)).to_contain_text("before this copy")


def test_the_day_of_an_old_reading_is_no_fault_of_the_clock(phone: Phone, page: Page) -> None:
    """Readings are judged for their own day, however long ago, and nothing is remarked."""
    phone.open(f"{SOUND}&on=2019-11-24")
    phone.waits_until_running()

    expect(_remark(page)).to_be_hidden()


@pytest.mark.parametrize(("years", "far"), [(1, False), (3, True)])
def test_a_given_day_is_weighed_like_the_clocks(
    phone: Phone, page: Page, years: int, far: bool
) -> None:
    """A plan for next year needs no remark; a day beyond the next edition does."""
    phone.open(f"{SOUND}&on={BUILT.year + years}-{BUILT:%m}-15")
    phone.waits_until_running()

    expect(_remark(page)).to_be_visible(visible=far)
    if far:
        expect(_remark(page)).to_contain_text("The day given")


@OF_ITS_OWN
def test_a_remark_goes_when_the_day_is_set_right(phone: Phone, page: Page) -> None:
    """It is of the day in the form, at each moment."""
    _clock(page, "2001-05-05")
    phone.open(SOUND)
    expect(_remark(page)).to_be_visible()

    phone.field("on").locator("input").fill("2019-11-24")

    expect(_remark(page)).to_be_hidden()


def test_today_needs_no_remark(phone: Phone, page: Page) -> None:
    """On the machine that runs this, whose clock is not before the day of the sources."""
    phone.open(SOUND)
    phone.waits_for("pass")

    expect(_remark(page)).to_be_hidden()


def test_a_day_is_the_same_day_west_of_greenwich(browser: Browser, host: Host) -> None:
    """The day of the build and the day given are days of a calendar, not moments."""
    context = browser.new_context(**PHONE, timezone_id="America/Los_Angeles")
    page = context.new_page()
    page.goto(f"{host.address}{SOUND}&on={BUILT.year + 3}-03-01")

    expect(_remark(page)).to_contain_text(f"The day given is 1 March {BUILT.year + 3}")
    expect(_remark(page)).to_contain_text(f"built, on {BUILT.day} {BUILT:%B %Y}")
    context.close()
