"""What a reader does with the job log, in the words of the tests; and a log that Python writes."""

from __future__ import annotations

import json
import zlib
from decimal import Decimal
from pathlib import Path
from typing import Any

from playwright.sync_api import Locator, expect

from checkers import run
from tests.browser.host import source_of
from tests.browser.phone import PATIENCE, Phone

CHECKER = "checkers/readings/"
DEVICE = "#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
READING = "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"
SOUND = f"{CHECKER}{DEVICE}{READING}&readings.0.value=28+ms"
SLOW = f"{CHECKER}{DEVICE}{READING}&readings.0.value=400+ms"

REQUEST = {
    "code": "gb",
    "on": "2026-11-24",
    "device": {"type": "A", "rated_residual_current": "30 mA"},
    "readings": [{"test": "trip-time", "multiple": "1", "waveform": "ac", "value": "28 ms"}],
}


def an_entry(number: int, **other: Any) -> dict[str, Any]:
    """Return an entry by the documented format, judged by the checkers in this Python."""
    checker = other.pop("checker", "readings")
    request = other.pop("request", REQUEST)
    return {
        "id": f"{number:032x}",
        "job": "Farm shop",
        "device": f"Way {number}",
        "note": "",
        "kept": "2026-11-24T09:30:00.000Z",
        "changed": "2026-11-24T09:30:00.000Z",
        "checker": checker,
        "build": "2026-11-20-0123456789ab",
        "request": request,
        "reply": run(checker, request),
        **other,
    }


def reading(value: str, **other: Any) -> dict[str, Any]:
    """Return the request with another trip time, and other parts."""
    first = REQUEST["readings"][0]  # type: ignore[index]  # a list of one reading
    return {**REQUEST, "readings": [{**first, "value": value}], **other}


def canonical(value: Any) -> str:
    """Return the canonical JSON of RFC 8785, for texts without rare characters."""
    if isinstance(value, dict):
        return "{" + ",".join(f"{canonical(k)}:{canonical(value[k])}" for k in sorted(value)) + "}"
    if isinstance(value, list):
        return "[" + ",".join(canonical(one) for one in value) + "]"
    if isinstance(value, float):
        return _number(value)
    return json.dumps(value, ensure_ascii=False)


def _number(value: float) -> str:
    """Return a number as ECMAScript writes it (RFC 8785, 3.2.2.3)."""
    if value.is_integer() and abs(value) < 1e21:
        return str(int(value))
    figures, _, exponent = repr(value).partition("e")
    if abs(value) >= 1e-6:
        return format(Decimal(repr(value)), "f")
    return f"{figures}e{int(exponent)}"


def sum_of(entry: dict[str, Any]) -> str:
    """Return the sum of an entry: CRC-32 (ISO 3309, as in zlib) of its canonical JSON."""
    return f"crc-{zlib.crc32(canonical(entry).encode()):08x}"


def written(folder: Path, *entries: dict[str, Any], name: str = "log.json") -> Path:
    """Write a log file by the documentation, laid out as the site never lays it out."""
    file = {
        "format": "residual-current job log",
        "version": 1,
        "written": "2026-11-24T18:00:00.000Z",
        "build": "2026-11-20-0123456789ab",
        "entries": [{**entry, "sum": sum_of(entry)} for entry in entries],
    }
    path = folder / name
    path.write_text(json.dumps(file, indent=2), encoding="utf-8")
    return path


class JobLog:
    """The job log of one phone: under a checker, and on its own page."""

    def __init__(self, phone: Phone) -> None:
        self.phone = phone
        self.page = phone.page

    def keep(self, case: str, outcome: str, **labels: str) -> None:
        """Open a case, wait for its verdict and keep it under labels."""
        self.fill(case, outcome, **labels)
        self.press_keep()
        expect(self.told).to_contain_text("Kept")

    def fill(self, case: str, outcome: str, **labels: str) -> None:
        """Open a case and fill the panel under it, without keeping yet."""
        self.page.goto("about:blank")  # the same page with another case would not be opened anew
        self.phone.open(case)
        self.phone.waits_for(outcome)
        self.panel.locator("summary").click()
        expect(self.panel.locator("[data-known=job]")).to_be_attached()
        for name, text in labels.items():
            self.panel.locator(f"[name={name}]").fill(text)

    def press_keep(self) -> None:
        """Press the button of the panel once it is alive."""
        self.panel.locator("[data-alive]").get_by_role("button", name="Keep this verdict").click()

    @property
    def panel(self) -> Locator:
        """What opens under a checker's form."""
        return self.page.locator("[data-keep]")

    @property
    def told(self) -> Locator:
        """What the panel said last."""
        return self.panel.locator("[data-told]")

    def open(self) -> None:
        """Open the log's own page."""
        self.phone.open("log/")
        self.page.locator("[data-log][data-ready]").wait_for(timeout=PATIENCE)

    def open_with(self, folder: Path, *entries: dict[str, Any]) -> None:
        """Open the log's page and take entries in, as a file brings them."""
        self.open()
        self.take_in(written(folder, *entries))
        expect(self.said).to_contain_text(f"{len(entries)} new")

    @property
    def entries(self) -> Locator:
        """The entries on the log's page."""
        return self.page.locator("[data-list] [data-id]")

    @property
    def said(self) -> Locator:
        """What the log's page said last."""
        return self.page.locator("[data-log] > [data-said]")

    def button(self, name: str) -> Locator:
        """Find a button of the log's page."""
        return self.page.locator("[data-log]").get_by_role("button", name=name)

    def stored(self) -> list[dict[str, Any]]:
        """Return what the log holds, as its page sees it."""
        found = self.page.evaluate(
            "async (script) => (await (await import(script)).openLog()).entries()",
            source_of("log/store/store.js"),
        )
        return sorted(found, key=lambda entry: str(entry["id"]))

    def saved(self, kind: str, folder: Path) -> Path:
        """Save the log as a file, and return the file."""
        with self.page.expect_download() as waiting:
            self.button(f"Save as {kind.upper()}").click()
        path = folder / waiting.value.suggested_filename
        waiting.value.save_as(path)
        return path

    def take_in(self, path: Path) -> None:
        """Choose a file to take in."""
        take = self.page.locator("details", has=self.page.locator("[data-file]"))
        if take.get_attribute("open") is None:
            take.locator("summary").click()
        self.page.locator("[data-file]").set_input_files(path)
