"""What must hold besides, for the verdicts on an arrangement to be true."""

from __future__ import annotations

from collections.abc import Iterator

from checkers.domain.device.device import DeviceType
from checkers.domain.quantities.quantity import format_number, format_quantity
from checkers.domain.sources.constants import CONSTANTS
from checkers.judgement.series.arrangement import Arrangement, DCProtection
from checkers.judgement.series.dc.sources import can_give_smooth_dc
from checkers.wording.book import part


def conditions(arrangement: Arrangement) -> Iterator[str]:
    """Yield the conditions that an arrangement as listed brings with it."""
    if _has_detection(arrangement):
        yield slow_drift()
        if _narrow_above_detection(arrangement):
            yield selectivity_on_pulses()
    ordinary = [load for load in arrangement.loads if not can_give_smooth_dc(load)]
    if any(load.equipment.need.smooth_dc for load in ordinary):
        yield part("series.not-added")
    parents = [one.parents for one in arrangement.devices]
    parents += [one.parents for one in arrangement.loads]
    if any(len(above) > 1 for above in parents):
        yield part("series.parallel")
    if any(load.equipment.load.two_way for load in arrangement.loads):
        yield part("series.two-way")
    yield part("series.only-listed")


def drift_rate() -> float:
    """Return the slowest rise of smooth DC [mA/s] at which 6 mA detection is type tested.

    Source: [1] IEC 62955:2018, 9.9.2.1.
    """
    start, end = CONSTANTS["detection_test_start"].value, CONSTANTS["detection_test_end"].value
    return (end - start) / (CONSTANTS["detection_test_time"].value / 1000)


def slow_drift() -> str:
    """Return the condition on smooth DC that rises more slowly than detection is tested with."""
    seen = CONSTANTS["detection_seen_blind_to_drift"]
    tested = CONSTANTS["detection_test_time"].citation
    return part(
        "series.slow-drift",
        rate=format_number(drift_rate(), 2),
        tested=tested.words,
        seen=format_quantity(seen.value, "mA"),
        reported=seen.citation.words,
    )


def selectivity_on_pulses() -> str:
    """Return the condition on what the maker of 6 mA detection must state."""
    known = CONSTANTS["limited_above_detection_up_to"]
    rating = format_quantity(known.value, "mA")
    return part("series.on-pulses", rating=rating, source=known.citation.words)


def _has_detection(arrangement: Arrangement) -> bool:
    loads = any(load.protection == DCProtection.RDC_DD for load in arrangement.loads)
    return loads or any(one.device.detects_dc for one in arrangement.devices)


def _narrow_above_detection(arrangement: Arrangement) -> bool:
    most = CONSTANTS["limited_above_detection_up_to"].value
    return any(
        one.device.type in {DeviceType.A, DeviceType.F}
        and (one.device.rated_residual_current or 0.0) <= most
        for one in arrangement.devices
    )
