"""Visit the plain page and our own in turn, round after round, and take the medians."""

from __future__ import annotations

from pathlib import Path
from statistics import median
from typing import NamedTuple

from playwright.sync_api import Playwright

from build_tools.benches.visits.visitor import Visitor
from build_tools.machine.browser_driver import browser_driver
from build_tools.machine.progress import show_now
from build_tools.site.server import served

VISITS = ("first_visit", "second_visit", "offline")


class Side(NamedTuple):
    """One of the two sites: its folder, its page, and when it has kept all it will keep."""

    folder: Path
    page: str
    kept: str


class Waits(NamedTuple):
    """Medians over the rounds of the wait for a verdict [ms], and ours as a part of the other's."""

    stock_ms: float
    ours_ms: float
    ratio: float


def waits(stock: Side, ours: Side, rounds: int, *, slow: bool) -> dict[str, Waits]:
    """Measure every kind of visit on both sites, one site after the other in each round.

    Args:
        stock: the site to compare with.
        ours: our own.
        rounds: how often.
        slow: whether the browser gets only part of the machine's time.

    Returns:
        The waits by the kind of visit: a browser that was never here, one that was, and one
        that was and now has no network.
    """
    seen: dict[str, list[tuple[float, float]]] = {kind: [] for kind in VISITS}
    with browser_driver() as playwright:
        for number in range(1, rounds + 1):
            show_now(f"round {number} of {rounds}{', slowed' if slow else ''}")
            pair = [_round(playwright, side, slow=slow) for side in (stock, ours)]
            for kind, *times in zip(VISITS, *pair, strict=True):
                seen[kind].append((times[0], times[1]))
    return {kind: _medians(times) for kind, times in seen.items()}


def _medians(times: list[tuple[float, float]]) -> Waits:
    stock, ours = (median(column) for column in zip(*times, strict=True))
    # Each round's own ratio: the machine's other work then falls on both of its halves.
    ratio = median(mine / other for other, mine in times)
    return Waits(round(stock, 1), round(ours, 1), round(ratio, 4))


def _round(playwright: Playwright, side: Side, *, slow: bool) -> tuple[float, float, float]:
    visitor = Visitor(playwright, slow=slow)
    try:
        with served(side.folder) as origin:
            address = f"{origin}/{side.page}"
            first = visitor.visit(address, side.kept)
            second = visitor.visit(address)
        return first, second, visitor.visit(address)
    finally:
        visitor.leave()
