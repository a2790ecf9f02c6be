"""Wherever two ends of a range are shown, each has its own unit."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import pytest

import checkers
from build_tools.pages.macros.currents import bands_macro, currents_macro
from checkers.catalogue import CHECKERS
from checkers.command_line.printing import print_reply
from checkers.domain.checker import Checker
from checkers.domain.device.device import DeviceType
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Table
from checkers.domain.limits.tables import TABLES
from checkers.domain.limits.words import describe

UNIT = r"(?:mA|µA|A|ms|s|ohm|kohm|V)\b"
BARE_LOW_END = re.compile(rf"(?<![\w.,×])\d[\d.,]*\s*(?:to|and|–)\s*[<>≤≥]?\s*\d[\d.,]*\s*{UNIT}")
RATINGS = (6.0, 10.0, 30.0, 100.0, 300.0, 500.0, 1000.0, 3000.0, 30_000.0)
DELAYS = (None, 60.0, 500.0, 2000.0, 10_000.0)


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for one in value.values():
            yield from _texts(one)
    elif isinstance(value, list):
        for one in value:
            yield from _texts(one)


@pytest.mark.parametrize("words", ["500 to 1 A", "130 to 2 s", "about 1.2 A (1100 to 1400 mA)"])
def test_the_search_finds_a_figure_without_its_unit(words: str) -> None:
    """Three that were printed once."""
    assert BARE_LOW_END.search(words)


@pytest.mark.parametrize("checker", CHECKERS, ids=lambda one: one.slug)
def test_no_reply_to_an_example_leaves_an_end_without_its_unit(checker: Checker) -> None:
    """Every text of every reply, and the reply as it is printed."""
    for example in checker.examples:
        for rated in ("", "1 A", "3 A"):
            request = dict(example.request)
            if rated and isinstance(request.get("device"), dict):
                request["device"] = request["device"] | {"rated_residual_current": rated}
            reply = checkers.run(checker.slug, request)
            for text in (*_texts(reply), " ".join(print_reply(reply).split())):
                assert BARE_LOW_END.findall(text) == []


@pytest.mark.parametrize("table", TABLES.values(), ids=TABLES.keys())
def test_no_limit_at_any_rating_leaves_an_end_without_its_unit(table: Table) -> None:
    """Each row as its table shows it, and as a verdict does at ratings from 6 mA to 30 A."""
    for row in table.rows:
        shown = [describe(row)["limit"]]
        for rated in RATINGS:
            for delay in DELAYS:
                low, high = row.at_least(rated, delay), row.at_most(rated, delay)
                shown.append(str(Limit(row.unit, low, high)))
        assert [words for words in shown if BARE_LOW_END.search(words)] == []


@pytest.mark.parametrize("type_", [one.value for one in DeviceType if one != "unknown"])
def test_no_table_of_currents_leaves_an_end_without_its_unit(type_: str) -> None:
    """The pages that show every rating beside each other, 1 A among them."""
    pages = [
        bands_macro(type_, ""),
        *(currents_macro(f"{type_} {one}", "") for one in ("none", "S")),
    ]
    cells = [cell for page in pages for cell in re.findall(r"<t[dh][^>]*>(.*?)</t[dh]>", page)]

    assert "500 mA to 1 A" in cells
    assert [cell for cell in cells if re.search(r"(?<![\w.])\d[\d.]* to ", cell)] == []
