"""One run of Lighthouse on one page, as on a phone, and what it says of the page."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, NamedTuple

from build_tools.benches.page_audits.npm_package import ensure_lighthouse
from build_tools.files import paths
from build_tools.machine.chromium import find_chromium
from build_tools.machine.node import find_node
from build_tools.machine.problems import Problem
from build_tools.machine.programs import ProgramFailedError, run_logged

CATEGORIES = ("performance", "accessibility", "best-practices")
REPORTS = paths.BUILD / "lighthouse" / "reports"
OPTIONS = (
    f"--only-categories={','.join(CATEGORIES)}",
    "--output=json",
    "--output=html",
    "--chrome-flags=--headless=new --no-sandbox",
    "--no-enable-error-reporting",
    "--quiet",
)


class Verdict(NamedTuple):
    """The scores of one run, 0 to 100 by category, and each audit that cost some of them."""

    scores: dict[str, float]
    lost: dict[str, str]


def audit(address: str, name: str) -> Verdict:
    """Let Lighthouse open a page, with its own ways of slowing a phone and its network down.

    Args:
        address: the page's address.
        name: the name of its reports, which stay in `.build/lighthouse/reports`.

    Returns:
        The scores, and what lost points.

    Raises:
        Problem: Lighthouse ended with an error, or gave no score.
    """
    REPORTS.mkdir(parents=True, exist_ok=True)
    program = [*find_node().node, str(ensure_lighthouse())]
    asked = [address, f"--output-path={REPORTS / name}", *OPTIONS]
    variables = {"CHROME_PATH": str(find_chromium())}
    try:
        run_logged(f"lighthouse-{name}", [*program, *asked], variables=variables)
    except ProgramFailedError as error:
        raise Problem("Lighthouse failed.", f"look at {error.log}, then run this again.") from error
    return read_report(REPORTS / f"{name}.report.json")


def read_report(path: Path) -> Verdict:
    """Read the scores from a report, and the name and value of each audit below full marks.

    Raises:
        Problem: a category has no score, as when an audit of it broke off.
    """
    report = json.loads(path.read_text(encoding="utf-8"))
    parts = report["categories"]
    if missing := [name for name in CATEGORIES if parts[name]["score"] is None]:
        raise Problem(
            f"Lighthouse gave no score: {', '.join(missing)}.",
            f"look at {path}, then run it again.",
        )
    scores = {name: 100 * parts[name]["score"] for name in CATEGORIES}
    weighed = [
        one["id"] for name in CATEGORIES for one in parts[name]["auditRefs"] if one["weight"]
    ]
    audits = [report["audits"][name] for name in dict.fromkeys(weighed)]
    return Verdict(scores, {one["id"]: _told(one) for one in audits if _lost(one)})


def _lost(one: dict[str, Any]) -> bool:
    return one["score"] is not None and one["score"] < 1


def _told(one: dict[str, Any]) -> str:
    return f"{100 * one['score']:.0f} of 100 {one.get('displayValue', '')}".rstrip()
