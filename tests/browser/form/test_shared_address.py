"""The address holds the whole case, so that a verdict can be kept and passed on."""

from __future__ import annotations

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import Phone

CHECKER = "checkers/readings/"
CASE = (
    "#code=gb&on=2026-11-24&device.type=AC&device.rated_residual_current=30+mA"
    "&readings.0.value=%3E300+ms&readings.0.test=trip-time&readings.0.multiple=1"
    "&readings.0.waveform=ac&readings.1.value=operates&readings.1.test=button"
    "&circuit.dc_residual=50+mA&circuit.seen_to_open=no"
)


def test_an_address_fills_the_form_and_gives_its_verdict(phone: Phone) -> None:
    """Opening a shared address shows the same case: every field, and its verdict."""
    phone.open(CHECKER + CASE)
    phone.waits_for("fail")

    expect(phone.field("code").locator("select")).to_have_value("gb")
    expect(phone.field("device", "type").locator("input:checked")).to_have_value("AC")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value(">300 ms")
    expect(phone.field("readings", "1", "test").locator("select")).to_have_value("button")
    expect(phone.field("circuit", "seen_to_open").locator("input:checked")).to_have_value("no")


def test_what_is_typed_goes_into_the_address(phone: Phone, page: Page) -> None:
    """After typing, a reload shows the same form."""
    phone.open(CHECKER)
    phone.waits_until_running()
    phone.chooses("A", "device", "type")
    phone.types("30", "device", "rated_residual_current")
    phone.types("0,028 s", "readings", "0", "value")
    page.wait_for_url("**value=0%2C028+s*")

    page.reload()

    phone.waits_until_running()
    expect(phone.field("device", "type").locator("input:checked")).to_have_value("A")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("0,028 s")


def test_the_copied_address_fixes_the_day(
    context: BrowserContext, phone: Phone, page: Page, host: Host
) -> None:
    """A case judged for today is passed on with its day, so that the verdict stays what it was."""
    context.grant_permissions(["clipboard-read", "clipboard-write"], origin=host.origin)
    phone.open(CHECKER + CASE.replace("on=2026-11-24&", ""))
    phone.waits_for("fail")

    page.locator("[data-copy]").click()

    expect(page.locator("[data-said]")).to_contain_text("Address copied")
    copied = str(page.evaluate("navigator.clipboard.readText()"))
    assert copied.startswith(f"{host.address}{CHECKER}#on=20")
    other = context.new_page()
    other.goto(copied)
    expect(other.locator('[data-verdict][data-outcome="fail"]')).to_be_visible(timeout=30_000)


def test_an_example_fills_the_form_in_place(phone: Phone, page: Page) -> None:
    """An example's link changes the case without fetching the page again."""
    phone.open(CHECKER)
    phone.waits_until_running()

    page.locator(".examples a").first.click()

    phone.waits_for("pass")
    expect(phone.field("device", "type").locator("input:checked")).to_have_value("A")


def test_the_last_device_and_code_are_remembered_here(phone: Phone) -> None:
    """A later visit starts with the device and code of the last one, and without its readings."""
    phone.open(CHECKER + CASE)
    phone.waits_for("fail")

    phone.open("safety/")
    phone.open(CHECKER)

    phone.waits_until_running()
    expect(phone.field("code").locator("select")).to_have_value("gb")
    expect(phone.field("device", "type").locator("input:checked")).to_have_value("AC")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("")


def test_nothing_is_remembered_where_storage_is_refused(
    phone: Phone, page: Page, guard: Guard
) -> None:
    """A browser that forbids storage loses the memory, not the checker."""
    guard.allow("storage refused")  # the theme complains
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage',"
        " { get() { throw new DOMException('storage refused', 'SecurityError'); } });"
    )
    phone.open(CHECKER + CASE)

    phone.waits_for("fail")


def test_a_broken_address_is_a_form_with_what_can_be_read_and_what_cannot(phone: Phone) -> None:
    """What is known is filled in; what is not stands there as it was given, and is refused."""
    phone.open(CHECKER + "#__proto__.x=1&readings.7.value=28&device.type=Z&nonsense=1")
    phone.waits_for("unfinished")

    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("28")
    expect(phone.field("device", "type").locator("input:checked")).to_have_count(0)
    expect(phone.field("device", "type").locator("[data-problem]")).to_contain_text("'Z'")
    expect(phone.page.locator("[data-strange]")).to_have_count(2)


# The write that was due comes before the browser tells of the new address.
OPENED_WHILE_WRITING = """(address) => {
  location.hash = address;
  dispatchEvent(new Event("pagehide"));
}"""


def test_a_case_opened_while_another_is_written_is_not_written_over(
    phone: Phone, page: Page
) -> None:
    """The address that was opened counts, and not what waited to be written into it."""
    sound = CASE.replace("%3E300+ms", "28+ms").replace("circuit.dc_residual=50+mA&", "")
    phone.open(CHECKER + sound)
    phone.waits_until_running()

    page.evaluate(OPENED_WHILE_WRITING, CASE)

    phone.waits_for("fail")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value(">300 ms")
