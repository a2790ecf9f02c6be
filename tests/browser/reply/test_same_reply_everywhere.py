"""One request has one reply: by address, form and log as on the command line, byte for byte."""

from __future__ import annotations

import json
from itertools import groupby
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from checkers.catalogue import CHECKERS
from tests.browser.log.job_log import JobLog, an_entry
from tests.browser.phone import PATIENCE, Phone
from tests.browser.sampling import sampled

PAGES_OF_THEIR_OWN = {"schedule", "practice"}  # they keep no single verdict
# As the command line takes it: numbers, true and false, what is empty, and a default that is said.
PLAIN: dict[str, Any] = {
    "code": "iec",
    "on": "2026-11-24",
    "device": {"type": "A", "rated_residual_current": "30 mA", "delay": "none", "made_to": ""},
    "readings": [
        {"test": "trip-time", "multiple": 1, "waveform": "ac", "phase": 0, "value": ">300"},
        {"test": "no-trip", "multiple": 0.5, "value": ">1999 ms"},
        {"test": "ramp", "waveform": "ac", "value": "27 mA"},
    ],
    "circuit": {"loads": "off", "dc_residual": None, "seen_to_open": False},
}
CASES: list[tuple[str, str, Any]] = [
    (f"{checker.slug} {number}", checker.slug, dict(example.request))
    for checker in CHECKERS
    if checker.slug not in PAGES_OF_THEIR_OWN
    for number, example in enumerate(checker.examples)
]
CASES.append(("explain plain", "explain", {**PLAIN, "on": ""}))
CASES += [
    (f"readings {word}", "readings", {**PLAIN, "circuit": {"seen_to_open": word}})
    for word in (True, False)
]
CASES.append(("readings plain", "readings", PLAIN))
CASES.sort(key=lambda one: one[1])
READINGS = {"readings", "explain", "type-for-load", "earth-electrode"}
OTHERS = {slug for _, slug, _ in CASES} - READINGS
LINKS = """() => {
    document.querySelectorAll("[data-id]").forEach((item) => { item.open = true; });
}"""
GO = """(hash) => new Promise((there) => {
    addEventListener("hashchange", () => there(), { once: true });
    location.hash = hash;
})"""

WRITE = """(all) => all.map(({ device, reply: { assumed = [], ...reply } }) => [
    device,
    JSON.stringify({ ...reply, assumed: assumed.filter(({ field }) => field !== "on") }),
])"""


@pytest.mark.parametrize("checkers", sampled([READINGS, OTHERS], always=1), ids=len)
def test_every_example_has_the_same_reply_from_the_log_and_back(
    phone: Phone, page: Page, tmp_path: Path, checkers: set[str]
) -> None:
    """A request as the command line takes it is taken in, opened, kept, saved and read alike."""
    chosen = [one for one in CASES if one[1] in checkers]
    job_log = JobLog(phone)
    job_log.open_with(tmp_path, *_entries(chosen))
    addresses = _addresses(page)
    assert set(addresses) == {name for name, _, _ in chosen}

    for slug, cases in groupby(chosen, lambda one: one[1]):
        phone.open(f"checkers/{slug}/#=")
        phone.waits_until_running()
        job_log.panel.locator("summary").click()
        for name, _, _ in cases:
            page.evaluate(GO, addresses[name].partition("#")[2])
            _keep(job_log, f"{name} again")

    job_log.open()
    before = job_log.stored()
    kept = _texts(page, before)
    for name, _, _ in chosen:
        assert kept[f"{name} again"] == kept[name], name
    job_log.take_in(job_log.saved("csv", tmp_path))
    expect(job_log.said).to_contain_text(f"0 new, {len(before)} here already")
    assert job_log.stored() == before


def _entries(cases: list[tuple[str, str, Any]]) -> list[dict[str, Any]]:
    return [
        an_entry(number, device=name, job="", checker=slug, request=json.loads(json.dumps(request)))
        for number, (name, slug, request) in enumerate(cases)
    ]


def _addresses(page: Page) -> dict[str, str]:
    page.evaluate(LINKS)
    found = page.evaluate(
        "() => Array.from(document.querySelectorAll('[data-id]'), (item) => ["
        " item.querySelector('.kept__text').childNodes[1].textContent.trim(),"
        " item.querySelector('a.action')?.href ?? ''])"
    )
    return dict(found)


def _keep(job_log: JobLog, name: str) -> None:
    job_log.panel.locator("[data-alive] [name=job]").fill(name)
    job_log.panel.locator("[name=device]").fill(name)
    for _ in range(PATIENCE // 50):
        told = job_log.told.inner_text()
        if name in told or "in the log already" in told:  # which a second tap is told
            return
        job_log.press_keep()  # once more where the verdict was not there yet
        job_log.page.wait_for_timeout(50)
    raise AssertionError(f"never kept: {name}; {job_log.told.inner_text()}")


def _texts(page: Page, entries: list[dict[str, Any]]) -> dict[str, str]:
    """Return each reply as the browser writes it, by the label it is kept under.

    The address of an entry says the day it was judged for: it is taken no more, but given.
    """
    return dict(page.evaluate(WRITE, entries))
