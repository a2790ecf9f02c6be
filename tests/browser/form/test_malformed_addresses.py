"""Whatever an address holds, there is a form, a word on what cannot be read, and a way on."""

from __future__ import annotations

import random
from pathlib import Path
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Page, expect

from tests.browser.guard import Guard
from tests.browser.log.job_log import JobLog, an_entry, written
from tests.browser.phone import PATIENCE, Phone
from tests.browser.sampling import sampled
from tests.browser.starts import LENGTH

CASE = (
    "code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28+ms"
)
PAGES = ("readings", "explain", "series", "leakage-budget", "over-the-years")
NAMES = (
    "code", "on", "on.x", "device", "device.type", "readings", "readings.0", "readings.0.value",
    "readings.99.value", "readings.12345678901.value", "circuit.seen_to_open", "items.0.count",
    "devices.0.id", "loads.0.below", "history.0.value", "text", "mapping.0.means", "__proto__",
    "constructor", "__proto__.x", "a.b.c.d.e.f.g.h.i.j", "", ".", "..", "0", "-1", "nonsense",
)  # fmt: skip
VALUES = (
    "", "28 ms", "gb", "A", "true", "null", "{}", "[object Object]", "\u0000", "%", "%E0%A4%A",
    "<b>bold</b>", "1e999", "NaN", "ü" * 50, "x" * 3000, "2026-11-24", "a.b=c&d", "\ud7ff\r\n",
)  # fmt: skip
# Each would once have kept the page busy for longer than anybody waits.
HUGE = {
    "names": CASE + "".join(f"&x{n}=1" for n in range(2900)),
    "names in an entry": CASE + "".join(f"&readings.0.x{n}=1" for n in range(2900)),
    "names in every entry": "&".join(f"readings.{n % 100}.x{n}=1" for n in range(2900)),
    "entries": CASE + "".join(f"&readings.{n}.value=28" for n in range(1, 2900)),
    "a value given again and again": CASE + "&code=gb" * 2900,
    "values": CASE + "".join(f"&readings.0.x{n}=1" for n in range(8000)),
    "a long value": CASE.replace("28+ms", "A" * 1_000_000),
    "a long name": f"{CASE}&{'n' * 1_000_000}=1",
    "a long path": f"{CASE}&{'a.' * 20_000}b=1",
}


def _is_usable(phone: Phone) -> None:
    """The bar has its word, and a click into the page is answered."""
    phone.waits_until_running()
    phone.page.locator("[data-inputs]").first.click(position={"x": 1, "y": 1})


def _says_what_it_cannot_read(page: Page) -> None:
    expect(page.locator("[data-verdict]")).to_have_attribute("data-outcome", "unfinished")
    expect(page.locator("[data-as-given]").first).to_be_visible()
    expect(page.locator("[data-problem]:visible").first).not_to_be_empty()


@pytest.mark.parametrize("what", sampled(HUGE, always=4))
def test_a_huge_address_ends_in_a_form_that_says_so(phone: Phone, what: str) -> None:
    """Nothing is judged, nothing stands still, and leaving it out is a way on."""
    phone.open("checkers/readings/")
    phone.waits_until_running()

    phone.page.evaluate("address => { location.hash = address }", HUGE[what])

    _says_what_it_cannot_read(phone.page)
    _is_usable(phone)
    assert phone.page.locator("[data-as-given]").count() < 40 * 100


def test_what_is_more_than_a_form_takes_is_counted_and_left_out_at_one_tap(phone: Phone) -> None:
    """A case that is filled in by half would be another case: nothing of it is filled in."""
    phone.open(f"checkers/readings/#{HUGE['values']}")
    phone.waits_for("unfinished")

    given = phone.page.locator("[data-as-given]")
    expect(given).to_have_count(1)
    expect(given).to_contain_text("8,008 values")
    expect(phone.field("readings", "0", "value").locator("input")).to_have_value("")
    given.get_by_role("button", name="Leave it out").click()
    expect(given).to_have_count(0)
    phone.page.wait_for_url(lambda url: len(url) < 1000)


def test_entries_beyond_what_the_form_takes_are_counted(phone: Phone) -> None:
    """The message tells how many the address holds, and how many may be."""
    phone.open(f"checkers/readings/#{HUGE['entries']}")
    phone.waits_for("unfinished")

    expect(phone.page.locator("[data-as-given]")).to_contain_text("2,900 entries")
    expect(phone.page.locator("[data-problem]:visible")).to_contain_text("1 to 100 entries")


def _address(chance: random.Random) -> str:
    pairs = [(chance.choice(NAMES), chance.choice(VALUES)) for _ in range(chance.randint(1, 12))]
    text = urlencode(pairs)
    return "&".join([CASE] * chance.randint(0, 1) + [text.replace("%25", "%")])


@pytest.mark.parametrize("slug", sampled(PAGES, always=1))
def test_no_address_leaves_a_page_without_a_form(phone: Phone, page: Page, slug: str) -> None:
    """Made by chance of what once broke a form; each ends in a bar with a word, without error."""
    chance = random.Random(slug)  # noqa: S311  # no secret
    phone.open(f"checkers/{slug}/")
    phone.waits_until_running()
    for _ in range(25):
        address = _address(chance)
        page.evaluate("address => { location.hash = address }", address)
        phone.waits_until_running()
        given = page.locator("[data-as-given]").count()
        if given:
            assert page.locator("[data-verdict]").get_attribute("data-outcome") != "pass", address
    page.reload()  # the last one as an address that is opened
    _is_usable(phone)


@pytest.mark.parametrize("slug", ["schedule", "practice"])
def test_a_name_that_a_page_has_not_is_said(phone: Phone, page: Page, slug: str) -> None:
    """Here as in every checker: misspelt, it would otherwise count for nothing in silence."""
    phone.open(f"checkers/{slug}/#nonsense=1&code=gb&text=Device%2Cx1%0AOne%2C28")

    phone.waits_for("unfinished")
    expect(page.locator("[data-as-given]").first).to_be_visible()
    expect(page.locator("[data-verdict]")).to_contain_text("Not judged")
    leave = page.get_by_role("button", name="Leave it out")
    while leave.count():
        leave.first.click()
    expect(page.locator("[data-verdict]")).not_to_contain_text("marked below")


@pytest.mark.slow
@pytest.mark.parametrize("slug", ["schedule", "practice"])
def test_no_address_leaves_a_schedule_or_practice_without_a_form(
    phone: Phone, page: Page, slug: str
) -> None:
    """By chance, and huge: the page has its word, and no error."""
    chance = random.Random(slug)  # noqa: S311  # no secret
    phone.open(f"checkers/{slug}/")
    phone.waits_until_running()
    for address in [*HUGE.values(), *(_address(chance) for _ in range(10))]:
        page.evaluate("address => { location.hash = address }", address)
        expect(page.locator("[data-verdict]")).not_to_have_attribute("data-outcome", "waiting")
    page.reload()
    phone.waits_until_running()


def test_a_form_that_cannot_be_filled_says_so_and_offers_the_page_without_it(
    phone: Phone, page: Page, guard: Guard
) -> None:
    """Whatever goes wrong while a checker comes to life, the bar does not say Starting for ever."""
    guard.allow("made to fail")
    page.add_init_script(
        "const sound = HTMLTemplateElement.prototype.getAttribute;"
        "const query = HTMLFormElement.prototype.querySelectorAll;"
        "HTMLFormElement.prototype.querySelectorAll = function (...all) {"
        " if (location.hash.includes('28')) { throw new Error('made to fail'); }"
        " return query.apply(this, all); };"
    )
    phone.open(f"checkers/readings/#{CASE}")

    phone.waits_for("unfinished")
    expect(phone.verdict).to_contain_text("could not be filled in")
    phone.verdict.get_by_role("link", name="Open it empty").click()

    expect(phone.verdict).to_contain_text("Still needed", timeout=PATIENCE)


@pytest.mark.parametrize("length", sampled(["999999999999", "-5", '"x"', "1.5", "null"], always=1))
def test_a_wrong_length_of_the_kept_image_is_an_ordinary_start(
    phone: Phone, page: Page, length: str
) -> None:
    """The number lies where anybody can change it."""
    phone.open("safety/")
    page.evaluate("([name, length]) => localStorage.setItem(name, length)", [LENGTH, length])

    phone.open(f"checkers/readings/#{CASE}")

    phone.waits_for("pass")


def test_a_checker_named_like_a_part_of_every_object_goes_by_its_name(
    phone: Phone, tmp_path: Path
) -> None:
    """An imported entry may say what it likes."""
    entry = an_entry(1)
    entry = {
        **entry,
        "checker": "constructor",
        "reply": {**entry["reply"], "checker": "constructor"},
    }
    job_log = JobLog(phone)
    job_log.open()
    phone.page.locator("[data-file]").set_input_files(written(tmp_path, entry))

    item = phone.page.locator("[data-id]")
    expect(item).to_contain_text("Constructor")
    item.locator("summary").first.click()
    expect(item).not_to_contain_text("native code")
    expect(item.get_by_role("link", name="Open in the checker")).to_have_count(0)
