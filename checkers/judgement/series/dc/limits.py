"""What one device does with smooth DC: how much it bears, and how much it lets pass unseen."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache

from checkers.domain.codes.registry import Code
from checkers.domain.device.device import Device, DeviceType, Form
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.sources.constants import CONSTANTS
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import tolerated_dc_row
from checkers.judgement.limits.current_bands import operating_band
from checkers.judgement.series.arrangement import Arrangement


@dataclass(frozen=True, slots=True)
class DCLimits:
    """How much smooth DC [mA] a device bears, and at which it opens by itself at the latest.

    `bears` is 0 where the document declares none on purpose, and None where type, rating or
    code does not tell. `opens_at` is None for a device that does not sense smooth DC, and for
    one whose rating is not known.
    """

    bears: float | None
    bears_row: Row | None
    senses: bool
    opens_at: float | None
    opens_row: Row | None


@lru_cache(maxsize=1024)
def dc_limits(device: Device, code: Code, day: date) -> DCLimits:
    """Return the limits for smooth DC of one device, by the code's table and its standard."""
    case = Case(device, Circuit(), Instrument(), code, day)
    row = tolerated_dc_row(case)
    band = _sensed_band(case) if senses_smooth_dc(device) else None
    return DCLimits(
        bears=_bears(row, device.rated_residual_current),
        bears_row=row,
        senses=senses_smooth_dc(device),
        opens_at=band.at_most if band else None,
        opens_row=band.rows[0] if band else None,
    )


def limits_of(arrangement: Arrangement, place: int) -> DCLimits:
    """Return the limits for smooth DC of the device in a place."""
    device = arrangement.devices[place].device
    return dc_limits(device, arrangement.code, arrangement.day)


def senses_smooth_dc(device: Device) -> bool:
    """Tell whether a device opens on smooth DC by itself."""
    if device.detects_dc:
        return True
    return device.senses_smooth_dc and device.opens


@lru_cache(maxsize=64)
def built_in_type_b(code: Code, day: date) -> float:
    """Return the smooth DC [mA] at which a type B built into equipment opens at the latest."""
    rating = CONSTANTS["built_in_type_b_rating"].value
    opens_at = dc_limits(Device(DeviceType.B, rating), code, day).opens_at
    assert opens_at is not None  # noqa: S101  # its type and rating are known
    return opens_at


@lru_cache(maxsize=64)
def detection(code: Code, day: date) -> float:
    """Return the smooth DC [mA] at which 6 mA detection opens at the latest."""
    opens_at = dc_limits(Device(form=Form.RDC_DD), code, day).opens_at
    assert opens_at is not None  # noqa: S101  # its table gives an absolute current
    return opens_at


def _bears(row: Row | None, rated: float | None) -> float | None:
    if row is None:
        return None
    return 0.0 if row.undeclared else row.at_most(rated)


def _sensed_band(case: Case) -> Limit | None:
    """Return the band in which it operates on smooth DC.

    A form whose own standard has no type B is taken by the standard of type B.
    """
    band = operating_band(case, "smooth-dc")
    if band is None:
        device = replace(case.device, form=Form.RCCB, made_to="")
        band = operating_band(replace(case, device=device), "smooth-dc")
    return band
