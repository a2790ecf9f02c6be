"""A value that the form does not know is refused by name, as on the command line: never another."""

from __future__ import annotations

from typing import Any
from urllib.parse import parse_qsl, urlencode

from playwright.sync_api import Page, expect

from checkers import run
from tests.browser.phone import Phone

CHECKER = "checkers/readings/"
CASE = {
    "code": "gb",
    "on": "2026-11-24",
    "device.type": "A",
    "device.rated_residual_current": "30 mA",
    "readings.0.test": "trip-time",
    "readings.0.multiple": "1",
    "readings.0.waveform": "ac",
    "readings.0.value": "28 ms",
}
# The command line refuses each of them by name.
REFUSED = [
    ("code", "dk"),
    ("code", "xx"),
    ("on", "24.11.2019"),
    ("on", "9999-99-99"),
    ("device.type", "Z"),
    ("device.type", "A-EV"),
    ("device.delay", "Q"),
    ("device.form", "box"),
    ("circuit.loads", "onn"),
    ("circuit.seen_to_open", "nein"),
    ("circuit.dc_residul", "50 mA"),
    ("readings.0.waveform", "sawtooth"),
    ("readings.0.valeu", "400 ms"),
    ("instrument", "good"),
    ("nonsense", "1"),
    ("__proto__", "1"),
]
SEEN = (
    "[document.querySelector('[data-inputs]').innerText, "
    "...Array.from(document.querySelectorAll('input:not([type=radio])'), (one) => one.value)]"
    ".join()"
)
# One place given twice, or as a value and as a group of values: neither may be left out unsaid.
TWICE = [
    "device.type=Z",
    "readings.0.value=400+ms",
    "readings.0.value.x=1",
    "device=B",
    "readings.x.value=28+ms",
    "readings=28",
]
# What Python reads as yes and as no; the form has one button for each.
YES_AND_NO = [("true", "yes"), ("1", "yes"), ("YES", "yes"), ("false", "no"), ("off", "no")]


def _address(**changes: str) -> str:
    return f"{CHECKER}#{urlencode({**CASE, **changes})}"


def _request(**changes: str) -> dict[str, Any]:
    """Return a case as the command line would be given it."""
    request: dict[str, Any] = {}
    for path, value in {**CASE, **changes}.items():
        *outer, last = path.split(".")
        place = request
        for name in outer:
            place = place.setdefault(name, {})
        place[last] = value
    return {**request, "readings": [request["readings"]["0"]]}


def _opens_in_place(phone: Phone, **changes: str) -> None:
    """Go to a case on the open page; a sound one between two tells their states apart."""
    phone.open(_address())
    phone.waits_for("pass")
    phone.open(_address(**changes))


def test_what_the_command_line_refuses_is_refused_by_name(phone: Phone, page: Page) -> None:
    """There is no verdict, the reason is the command line's, what was given is shown and stays."""
    for path, value in REFUSED:
        refusal = run("readings", _request(**{path: value}))
        (reason,) = refusal["errors"].values()

        _opens_in_place(phone, **{path: value})

        phone.waits_for("unfinished")
        expect(page.locator("[data-problem]:visible")).to_have_text([reason])
        assert value in page.evaluate(SEEN), (path, value)
        expect(page.locator("[data-results]")).to_be_empty()
        page.evaluate("dispatchEvent(new Event('pagehide'))")  # writes the address at once
        written = dict(parse_qsl(page.evaluate("location.hash.slice(1)")))
        assert written == {**CASE, path: value}


def test_a_refused_address_is_refused_after_a_reload(phone: Phone, page: Page) -> None:
    """What a page wrote into the address is opened again as what it was."""
    phone.open(_address(**{"device.type": "Z", "circuit.dc_residul": "50 mA"}))
    phone.waits_for("unfinished")
    page.evaluate("dispatchEvent(new Event('pagehide'))")

    page.reload()

    phone.waits_for("unfinished")
    expect(page.locator("[data-as-given]")).to_have_count(2)


def test_what_is_given_twice_is_refused(phone: Phone, page: Page) -> None:
    """An address with two values for one place has no verdict, whichever came first."""
    case = urlencode(CASE)
    for more in TWICE:
        for address in (f"{case}&{more}", f"{more}&{case}"):
            _opens_in_place(phone)
            phone.open(f"{CHECKER}#{address}")

            phone.waits_for("unfinished")
            expect(page.locator("[data-problem]:visible").first).not_to_be_empty()


def test_yes_and_no_are_read_as_python_reads_them(phone: Phone) -> None:
    """Every word for yes or no lights its button and gives the command line's verdict."""
    for word, button in YES_AND_NO:
        changes = {"readings.0.value": ">300 ms", "circuit.seen_to_open": word}

        _opens_in_place(phone, **changes)

        phone.waits_for(run("readings", _request(**changes))["outcome"])
        lit = phone.field("circuit", "seen_to_open").locator("input:checked")
        expect(lit).to_have_value(button)


def test_a_value_as_given_makes_way_for_a_choice(phone: Phone, page: Page) -> None:
    """Choosing takes its place, and what has no field can be left out: then there is a verdict."""
    phone.open(_address(**{"device.type": "Z", "nonsense": "1"}))
    phone.waits_for("unfinished")

    phone.chooses("A", "device", "type")
    expect(page.locator("[data-problem]:visible")).to_have_count(1)
    page.get_by_role("button", name="Leave it out").click()

    phone.waits_for("pass")
    expect(page.locator("[data-as-given]")).to_have_count(0)


def test_an_address_with_more_entries_than_allowed_is_refused_at_once(phone: Phone) -> None:
    """Thousands of readings are refused by their number and are not laid out one by one."""
    many = "".join(f"&readings.{number}.value=28" for number in range(1, 2000))

    phone.open(f"{_address()}{many}")

    phone.waits_for("unfinished")
    expect(phone.page.locator("[data-problem]:visible")).to_have_text(
        ["must hold 1 to 100 entries"]
    )


def test_a_path_of_thousands_of_names_is_refused(phone: Phone, page: Page) -> None:
    """The page says that it is no field, and lives on."""
    phone.open(f"{_address()}&{'a.' * 20_000}b=1")

    phone.waits_for("unfinished")
    expect(page.locator("[data-strange]")).to_have_count(1)
    expect(page.locator("[data-problem]:visible")).to_contain_text(["is not a field here"])
