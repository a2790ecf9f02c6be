"""How long a visitor waits for the first verdict, against a page with the runtime as it comes."""

from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from build_tools.benches.budgets import Measurement
from build_tools.benches.visits.rounds import VISITS, Side, waits
from build_tools.benches.visits.slowing import SLOWNESS, can_slow
from build_tools.benches.visits.stock_site import ensure_stock_site
from build_tools.benches.visits.weight import compressed_bytes
from build_tools.machine.progress import say
from build_tools.site.build import ensure_site

ROUNDS = 7
SLUG = "readings"
REQUEST: dict[str, Any] = {
    "code": "gb",
    "on": "2026-11-24",
    "device": {"type": "A", "rated_residual_current": "30 mA"},
    "readings": [{"test": "trip-time", "multiple": "1", "waveform": "ac", "value": "28"}],
}


def _flat(value: Any, path: str = "") -> dict[str, str]:
    if isinstance(value, dict | list):
        pairs = value.items() if isinstance(value, dict) else enumerate(value)
        parts = [_flat(one, f"{path}.{key}".lstrip(".")) for key, one in pairs]
        return {key: one for part in parts for key, one in part.items()}
    return {path: str(value)}


SITE_PAGE = f"checkers/{SLUG}/#{urlencode(_flat(REQUEST))}"
# The copy for use without a network is whole, and the image for the next start is kept and tried.
KEPT = """
localStorage.getItem("/ start image") > 0 && localStorage.getItem("/ start rehearsed")
  && document.querySelector("[data-offline]").textContent.includes("Works offline")
"""
SLOWING = (
    "every process of the browser is stopped and continued many times a second, so that page, "
    f"workers and compilers alike run 1/{SLOWNESS} of the time"
)


def table(rounds: int = ROUNDS) -> dict[str, Any]:
    """Visit both pages in turn, at full speed and slowed.

    Args:
        rounds: how often each.

    Returns:
        Waits by the kind of visit, the same under "slowed", and the bytes before a verdict.
    """
    site = ensure_site()
    stock = Side(ensure_stock_site(SLUG, REQUEST), "?keep", "document.body.dataset.kept === 'yes'")
    ours = Side(site, SITE_PAGE, KEPT)
    found: dict[str, Any] = _waits(stock, ours, rounds, slow=False)
    if can_slow():
        found["slowed"] = _waits(stock, ours, rounds, slow=True)
        found["slowing"] = SLOWING
    else:
        say("This system cannot stop and continue a browser: nothing is measured slowed.")
    found["compressed_bytes"] = compressed_bytes(site, SITE_PAGE)
    return found


def measurements(found: dict[str, Any]) -> list[Measurement]:
    """Give what is held against the budgets: ratios, and bytes [MB of a million]."""
    speeds = {"": found, "slowed": found.get("slowed", {})}
    ratios = [
        Measurement(f"{kind.replace('_', '-')}-ratio", speed[kind]["ratio"], about)
        for about, speed in speeds.items()
        for kind in VISITS
        if kind in speed
    ]
    return [*ratios, Measurement("fetched-before-a-verdict", found["compressed_bytes"] / 1e6)]


def _waits(stock: Side, ours: Side, rounds: int, *, slow: bool) -> dict[str, Any]:
    return {kind: one._asdict() for kind, one in waits(stock, ours, rounds, slow=slow).items()}
