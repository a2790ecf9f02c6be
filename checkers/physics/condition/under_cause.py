"""One draw of a device, its circuit and its handling, under any one cause."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from checkers.physics.condition.circuit_causes import (
    blinded_by_dc,
    leakage_adds,
    leakage_opposes,
    load_disturbs,
    neutral_earth_path,
    no_return_path,
    other_device_first,
    type_too_low,
)
from checkers.physics.condition.device_faults import (
    button_failed,
    does_not_open,
    erratic_mechanism,
    fails_on_one_start,
    slow_mechanism,
    trips_too_high,
    trips_too_low,
    wrong_device,
)
from checkers.physics.condition.handling_mistakes import timer_ran_on, wrong_current, wrong_waveform
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.random_draws import Lots
from checkers.physics.condition.sound_device import in_good_order
from checkers.physics.condition.state import Possible

Change = Callable[[Possible, Known, Lots], Possible]


def _nothing(possible: Possible, known: Known, lots: Lots) -> Possible:
    del known, lots
    return possible


CHANGES: Mapping[str, Change] = MappingProxyType(
    {
        "in-good-order": _nothing,
        "type-too-low": type_too_low,
        "blinded-by-dc": blinded_by_dc,
        "trips-too-high": trips_too_high,
        "trips-too-low": trips_too_low,
        "slow-mechanism": slow_mechanism,
        "erratic-mechanism": erratic_mechanism,
        "fails-on-one-start": fails_on_one_start,
        "does-not-open": does_not_open,
        "button-failed": button_failed,
        "wrong-device": wrong_device,
        "leakage-adds": leakage_adds,
        "leakage-opposes": leakage_opposes,
        "load-disturbs": load_disturbs,
        "neutral-earth-path": neutral_earth_path,
        "other-device-first": other_device_first,
        "no-return-path": no_return_path,
        "wrong-waveform": wrong_waveform,
        "wrong-current": wrong_current,
        "timer-ran-on": timer_ran_on,
    }
)


def under_cause(cause: str, known: Known, lots: Lots) -> Possible:
    """Return one possible state of affairs under a cause, by its permanent code."""
    return CHANGES[cause](in_good_order(known, lots), known, lots)
