"""The accessibility rules of axe-core find nothing, in light and in dark."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, expect

from build_tools import runtime_package
from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import NO_COPY, PHONE, Phone

AXE = runtime_package.FOLDER / "node_modules" / "axe-core" / "axe.min.js"
CASE = (
    "checkers/readings/#code=gb&device.type=AC&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"
    "&readings.0.value=%3E300&readings.1.value=hello&circuit.dc_residual=50+mA"
)
PLACES = (
    "",
    "checkers/",
    CASE.split("&readings.1", maxsplit=1)[0],
    CASE,
    "device-types/",
    "test-multiples/",
    "limits/",
    "limits/iec-61008-1/",
    "codes/gb/",
    "safety/",
    "sources/",
)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(browser: Browser, host: Host, guard: Guard, scheme: str) -> None:
    """No rule is broken on any kind of page, with findings and with marked fields too."""
    context = browser.new_context(**{**PHONE, "color_scheme": scheme})
    context.add_init_script(NO_COPY)
    guard.watch(context)
    guard.allow("404 (Not Found)")
    phone = Phone(context.new_page(), host)
    found = []
    for place in PLACES:
        phone.open("404.html")  # so that an address that differs after its # is opened anew
        phone.open(place)
        if place.startswith("checkers/readings/"):
            phone.waits_until_running()
        expect(phone.page.locator("body")).to_have_attribute(
            "data-md-color-scheme", "slate" if scheme == "dark" else "default"
        )
        phone.page.evaluate(AXE.read_text(encoding="utf-8"))
        report = phone.page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
        found += [
            (place, one["id"], node["target"], node["failureSummary"])
            for one in report["violations"]
            for node in one["nodes"]
        ]
    context.close()

    assert found == []
