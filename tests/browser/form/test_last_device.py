"""What was typed counts at once; what stands from the last device does not, for the next."""

from __future__ import annotations

from playwright.sync_api import Locator, Page, expect

from tests.browser.log.job_log import READING, SOUND, JobLog
from tests.browser.phone import Phone

NO_TRIP = "&readings.1.test=no-trip&readings.1.multiple=1%2F2&readings.1.waveform=ac"
BUTTON = "&readings.2.test=button&readings.2.value=operates"
BOARD = f"{SOUND}{NO_TRIP}&readings.1.value=no+trip{BUTTON}&circuit.seen_to_open=yes"
FIRST_VALUE = "[data-many=readings] [data-field=value] input"


def _question(page: Page) -> Locator:
    return page.locator("[data-of-last]")


def _waiting(page: Page) -> Locator:
    return page.locator("[data-last]")


def test_what_is_typed_the_moment_before_a_reload_is_judged_after_it(
    phone: Phone, page: Page
) -> None:
    """The field holds what was typed, with its own verdict, and so it stays on the next reload."""
    phone.open(SOUND)
    phone.waits_for("pass")

    page.locator(FIRST_VALUE).fill("400 ms")
    page.reload()

    for _ in range(2):
        phone.waits_for("fail")
        expect(phone.field("readings", "0", "value").locator("input")).to_have_value("400 ms")
        page.wait_for_url("**value=400+ms*")
        page.reload()


def test_an_address_opened_anew_is_not_what_was_typed_at_it_once(phone: Phone, page: Page) -> None:
    """Only a reload brings back what was typed; opening the page again does not."""
    phone.open("checkers/readings/")
    phone.waits_until_running()
    page.locator(FIRST_VALUE).fill("400 ms")
    page.reload()
    page.wait_for_url("**value=400+ms*")

    page.goto("about:blank")
    phone.open("checkers/readings/")

    phone.waits_until_running()
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("")


def test_readings_of_the_last_device_wait_when_another_type_is_typed_over_it(
    phone: Phone, page: Page
) -> None:
    """They are marked, counted nowhere, told of in the bar, and count again with one tap."""
    phone.open(BOARD)
    phone.waits_for("pass")

    phone.chooses("AC", "device", "type")

    phone.waits_for("unfinished")
    expect(_question(page)).to_contain_text("3 readings and 1 entry on the circuit")
    expect(phone.verdict).to_contain_text("4 of the last device not counted")
    phone.chooses("A", "device", "type")  # back again: it is the device they were read on
    phone.waits_for("pass")
    expect(_waiting(page)).to_have_count(0)

    phone.chooses("AC", "device", "type")
    _question(page).get_by_role("button", name="Count for this device").click()

    phone.waits_for("pass")
    expect(_question(page)).to_have_count(0)


def test_what_is_typed_for_the_next_device_counts_and_the_rest_does_not(
    phone: Phone, page: Page
) -> None:
    """After a verdict is kept, typing over one reading leaves the others to the kept device."""
    job_log = JobLog(phone)
    job_log.keep(BOARD, "pass", job="Farm shop", device="Way 3")

    phone.types("29 ms", "readings", "0", "value")

    expect(_waiting(page)).to_have_count(3)
    phone.waits_for("pass")
    expect(phone.verdict).to_contain_text("3 of the last device not counted.")
    page.wait_for_url("**value=29+ms*")
    assert "no+trip" not in page.url
    assert "operates" not in page.url
    assert "seen_to_open" not in page.url
    job_log.panel.locator("[name=device]").fill("Way 4")  # typed last, it is the new one's own name
    expect(_waiting(page)).to_have_count(3)
    expect(phone.verdict).to_contain_text("3 of the last device not counted")


def test_another_label_leaves_the_readings_to_the_last_device(phone: Phone, page: Page) -> None:
    """After a verdict is kept, typing the next label is enough; a tap says that it was a slip."""
    job_log = JobLog(phone)
    job_log.keep(BOARD, "pass", device="Way 3")

    job_log.panel.locator("[name=device]").fill("Way 31")

    phone.waits_for("unfinished")
    expect(_waiting(page)).to_have_count(4)
    _question(page).get_by_role("button", name="Count for this device").click()
    phone.waits_for("pass")


def test_what_is_cleared_comes_back_as_it_was(phone: Phone, page: Page) -> None:
    """Clearing leaves what is the new device's own; undoing brings the rest back, still waiting."""
    phone.open(BOARD)
    phone.waits_for("pass")
    phone.chooses("AC", "device", "type")
    phone.types("29 ms", "readings", "0", "value")
    phone.waits_for("pass")

    _question(page).get_by_role("button", name="Clear").click()
    expect(phone.field("readings").locator("[data-entry]")).to_have_count(1)
    expect(phone.field("circuit", "seen_to_open").locator("input:checked")).to_have_value("")
    page.locator("[data-told-undo]").get_by_role("button", name="Undo").click()

    expect(_waiting(page)).to_have_count(3)
    expect(phone.field("readings").locator("[data-entry]")).to_have_count(3)
    expect(phone.verdict).to_contain_text("3 of the last device not counted")


def test_what_waits_is_not_counted_after_a_reload_either(phone: Phone, page: Page) -> None:
    """The readings still stand there, and still wait for a word."""
    phone.open(BOARD)
    phone.waits_for("pass")
    phone.chooses("AC", "device", "type")
    phone.waits_for("unfinished")

    page.reload()

    phone.waits_for("unfinished")
    expect(_waiting(page)).to_have_count(4)
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("28 ms")


def test_filling_in_the_device_after_its_readings_asks_nothing(phone: Phone, page: Page) -> None:
    """A type, a rating or a label that was not said before is of the device that was read."""
    phone.open(f"checkers/readings/#code=gb&on=2026-11-24{READING}&readings.0.value=28+ms")
    phone.waits_until_running()

    phone.chooses("A", "device", "type")
    phone.types("30 mA", "device", "rated_residual_current")

    phone.waits_for("pass")
    expect(_waiting(page)).to_have_count(0)
