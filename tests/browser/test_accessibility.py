"""The accessibility rules of axe-core find nothing, in light and in dark."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from build_tools import runtime_package
from build_tools.checker_shows import fragment
from checkers.catalogue import CHECKERS
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import NO_COPY, PHONE, Phone

AXE = runtime_package.FOLDER / "node_modules" / "axe-core" / "axe.min.js"
FAILS = (
    "checkers/readings/#code=gb&device.type=AC&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"
    "&readings.0.value=%3E300&circuit.dc_residual=50+mA"
)
MARKED = f"{FAILS}&readings.1.value=hello"


def _sections(site: Path) -> Iterator[str]:
    """The front page, and the weightiest page of every section."""
    yield ""
    for section in sorted({path.parent.parent for path in site.glob("*/*/index.html")}):
        pages = section.rglob("index.html")
        weightiest = max(pages, key=lambda path: path.stat().st_size)
        yield f"{weightiest.parent.relative_to(site).as_posix()}/"
    yield from ("safety/", "sources/", FAILS, MARKED)


def _violations(phone: Phone, place: str) -> list[tuple[Any, ...]]:
    phone.open("404.html")  # so that an address that differs after its # is opened anew
    phone.open(place)
    if phone.verdict.count():
        expect(phone.verdict.first).not_to_have_attribute("data-outcome", "waiting", timeout=60_000)
    phone.page.evaluate(AXE.read_text(encoding="utf-8"))
    report = phone.page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
    return [
        (place, one["id"], node["target"], node["failureSummary"])
        for one in report["violations"]
        for node in one["nodes"]
    ]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_any_section(
    browser: Browser, host: Host, guard: Guard, scheme: str
) -> None:
    """No rule is broken on any kind of page, with findings and with marked fields too."""
    context = browser.new_context(**{**PHONE, "color_scheme": scheme})
    context.add_init_script(NO_COPY)
    guard.watch(context)
    guard.allow("404 (Not Found)")
    phone = Phone(context.new_page(), host)
    found = []
    for place in _sections(host.folder):
        found += _violations(phone, place)
        expect(phone.page.locator("body")).to_have_attribute(
            "data-md-color-scheme", "slate" if scheme == "dark" else "default"
        )
    context.close()

    assert found == []


def test_axe_finds_nothing_in_any_checker(browser: Browser, host: Host, guard: Guard) -> None:
    """Every checker's form, with the findings of its first example, breaks no rule."""
    context = browser.new_context(**PHONE)
    context.add_init_script(NO_COPY)
    guard.watch(context)
    guard.allow("404 (Not Found)")
    phone = Phone(context.new_page(), host)
    found = []
    for checker in CHECKERS:
        case = fragment(checker.examples[0].request)
        found += _violations(phone, f"checkers/{checker.slug}/#{case}")
    context.close()

    assert found == []
