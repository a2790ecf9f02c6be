"""Cells come back from CSV exactly as they were, whatever they hold, and never run."""

from __future__ import annotations

import csv
import io
import random
from typing import Any

from playwright.sync_api import Page

from tests.browser.host import source_of
from tests.browser.log.job_log import JobLog
from tests.browser.phone import Phone

DANGEROUS = ["=", "+", "-", "@", "'", '"', ";", "|", ",", "\t", "\r", "\n", " ", "a", "＝", "é"]


def _texts(seed: int, number: int) -> list[str]:
    """Texts made of the characters that matter, the same on every run."""
    source = random.Random(seed)  # noqa: S311  # no secret hangs on it
    return ["".join(source.choices(DANGEROUS, k=source.randrange(9))) for _ in range(number)]


def _ask(page: Page, expression: str, argument: Any) -> Any:
    load = f"const cells = await import({source_of('log/file/cells.js')!r});"
    return page.evaluate(f"async (given) => {{ {load} return {expression}; }}", argument)


def test_every_text_comes_back(phone: Phone, page: Page) -> None:
    """Ten thousand texts of dangerous characters are the same after writing and reading."""
    JobLog(phone).open()
    texts = _texts(seed=1, number=10_000)
    rows = [["x", *texts[place : place + 10]] for place in range(0, len(texts), 10)]

    assert _ask(page, "cells.fromCells(cells.toCells(given)).map((row) => row.cells)", rows) == rows


def test_no_cell_runs_under_any_separator(phone: Phone, page: Page) -> None:
    """Split at comma, semicolon, bar or tab, no piece begins with what starts a formula."""
    JobLog(phone).open()
    texts = _texts(seed=2, number=5_000)
    written = _ask(page, "given.map(cells.harmless)", texts)

    for separator in ",;|\t\n\r":
        pieces = [piece for cell in written for piece in _split(cell, separator)]
        assert [piece for piece in pieces if piece.lstrip('" ').startswith(tuple("=+-@＝"))] == []


def _split(cell: str, separator: str) -> list[str]:
    return [cell] if separator == "," else cell.split(separator)


def test_python_reads_what_is_written(phone: Phone, page: Page) -> None:
    """RFC 4180, read by Python's csv module: each cell is the harmless text."""
    JobLog(phone).open()
    texts = [text for text in _texts(seed=3, number=500) if "\r" not in text]
    written = _ask(page, "cells.toCells(given)", [["x", text] for text in texts])
    read = list(csv.reader(io.StringIO(written.removeprefix("\ufeff"), newline=""), strict=True))

    assert [row[1] for row in read] == _ask(page, "given.map(cells.harmless)", texts)
