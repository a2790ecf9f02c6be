"""What Lighthouse says of the front page and of a checker's, opened on a slowed phone."""

from __future__ import annotations

from statistics import median
from typing import Any

from build_tools.benches.budgets import Measurement
from build_tools.benches.page_audits.audits import CATEGORIES, Verdict, audit
from build_tools.machine.progress import say, show_now
from build_tools.site.build import ensure_site
from build_tools.site.server import served

ROUNDS = 5
PAGES = {"front page": "", "readings": "checkers/readings/"}


def table(rounds: int = ROUNDS) -> dict[str, Any]:
    """Open each page in turn, round after round, with a browser started anew each time.

    Args:
        rounds: how often; of an even number one more, so that the median is a run's own score.

    Returns:
        By page: the median of each category [0 to 100], the runs' own, and the audits that lost
        points in the last run.
    """
    odd = rounds + 1 - rounds % 2
    seen: dict[str, list[Verdict]] = {name: [] for name in PAGES}
    with served(ensure_site()) as origin:
        for number in range(1, odd + 1):
            show_now(f"round {number} of {odd}")
            for name, place in PAGES.items():
                report = f"{name.replace(' ', '-')}-{number}"
                seen[name].append(audit(f"{origin}/{place}", report))
    return {name: _summary(verdicts) for name, verdicts in seen.items()}


def measurements(found: dict[str, Any]) -> list[Measurement]:
    """Give the medians, a figure a category and page, and tell what lost points."""
    for name, page in found.items():
        for about, told in page["lost"].items():
            say(f"      {name}: {about} {told}")
    return [
        Measurement(f"lighthouse-{category}", page[category], name)
        for name, page in found.items()
        for category in CATEGORIES
    ]


def _summary(verdicts: list[Verdict]) -> dict[str, Any]:
    runs = {name: [one.scores[name] for one in verdicts] for name in CATEGORIES}
    medians = {name: median(scores) for name, scores in runs.items()}
    return {**medians, "runs": runs, "lost": verdicts[-1].lost}
