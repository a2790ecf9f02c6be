"""A device with smooth DC through its core: what it bears, and what the model makes of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

from checkers.domain.device.device import DeviceType
from checkers.domain.limits.limit import Limit
from checkers.domain.limits.rows import Row
from checkers.domain.limits.tables import rows_in
from checkers.judgement.case import Case
from checkers.judgement.dc.fitness import tolerated_dc_row
from checkers.judgement.limits.current_bands import band_of, operating_band
from checkers.physics.core.button_under_bias import ButtonOperates, button_operates
from checkers.physics.core.dc_sensing import DcOpening
from checkers.physics.core.device_under_bias import CurvePoint, trip_band, trip_curve
from checkers.physics.core.parameters import CORE
from checkers.physics.core.trip_band import TripBand, own_trip_band

TOLERATED = "iec-60364-5-53/smooth-dc-tolerated"  # where the local code has no table of its own
OPERATING = "iec-62423/operating-currents"
CURVE_REACH = 10.0  # in ratings: as far as a curve reaches at least


@dataclass(frozen=True)
class DcBiasCase:
    """What is asked: a case, the smooth DC [mA], and the trip current measured without DC [mA]."""

    case: Case
    dc: float
    measured_own: float | None

    @property
    def rated(self) -> float | None:
        """The rated residual current [mA], or None."""
        return self.case.device.rated_residual_current

    @property
    def type_known(self) -> bool:
        """Whether the device's type is given."""
        return self.case.device.type != DeviceType.UNKNOWN

    @property
    def modelled_type(self) -> str:
        """The type the figures are for: an unknown one is taken as AC, which DC harms most."""
        return self.case.device.type if self.type_known else DeviceType.AC

    @property
    def modelled(self) -> bool:
        """Whether the model says anything of this device."""
        if self.case.device.form not in CORE.forms:
            return False
        needs_rating = self.measured_own is None or self.case.device.senses_smooth_dc
        return self.rated is not None or not needs_rating

    @cached_property
    def own(self) -> TripBand:
        """The trip current without DC: as measured, or where the standard lets it lie."""
        if self.measured_own is not None:
            return TripBand.measured(self.measured_own)
        assert self.rated is not None  # noqa: S101  # asked for only where `modelled`
        return own_trip_band(self.rated)

    @cached_property
    def trip(self) -> TripBand:
        """The AC trip current while the DC flows; from 0 for an unknown type, which may be B."""
        band = trip_band(self.modelled_type, self.own, self.dc, self.opening, self.rated)
        band = self._assured(band, self.dc)
        return band if self.type_known else TripBand(band.typical, 0.0, band.high)

    def _assured(self, band: TripBand, dc: float) -> TripBand:
        """Return a band cut to the rating, up to the DC that is declared to leave AC in order."""
        rated, tolerated = self.rated, self.tolerated
        if rated is None or tolerated is None or dc > tolerated or self.own.high > rated:
            return band
        most = max(rated, band.typical)
        return TripBand(band.typical, band.low, min(band.high, most))

    @cached_property
    def curve(self) -> tuple[CurvePoint, ...]:
        """Trip currents to draw, to beyond the DC asked about and some ratings of DC."""
        reach = max(self.dc, CURVE_REACH * (self.rated or self.own.typical))
        points = trip_curve(self.modelled_type, self.own, reach, self.opening, self.rated)
        return tuple(replace(one, trip=self._assured(one.trip, one.dc_residual)) for one in points)

    @property
    def button(self) -> ButtonOperates:
        """Whether the test button would open the device."""
        if self.rated is None:
            return ButtonOperates.CANNOT_SAY
        return button_operates(self.trip, self.rated)

    @property
    def opens_on_the_dc(self) -> str:
        """Whether the DC alone opens the device: no, may, or must."""
        if self.opening is None or self.dc < self.opening.may_from:
            return "no"
        return "must" if self.dc >= self.opening.must_at else "may"

    @cached_property
    def tolerated_row(self) -> Row | None:
        """The row that says how much smooth DC the type bears; None for an unknown type."""
        if not self.type_known:
            return None
        asked = {"type": self.case.device.type, "rated": self.rated}
        found = rows_in(TOLERATED, on=self.case.day, **asked)
        return tolerated_dc_row(self.case) or (found[0] if found else None)

    @property
    def tolerated(self) -> float | None:
        """The smooth DC the type is declared to bear [mA], or None for none or not known."""
        row = self.tolerated_row
        return None if row is None or row.undeclared else row.at_most(self.rated)

    @cached_property
    def opening_band(self) -> Limit | None:
        """Between which smooth DC a type that senses it opens by itself."""
        if not self.case.device.senses_smooth_dc:
            return None
        asked = {"type": self.case.device.type, "waveform": "smooth-dc", "rated": self.rated}
        found = rows_in(OPERATING, on=self.case.day, **asked)
        return operating_band(self.case, "smooth-dc") or band_of(found[0], self.case)

    @cached_property
    def opening(self) -> DcOpening | None:
        """The same as two currents [mA], or None."""
        band = self.opening_band
        if band is None or band.at_least is None or band.at_most is None:
            return None
        return DcOpening(band.at_least, band.at_most)
