"""One possible state of affairs: a device, its circuit, and how it was tested."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf


@dataclass(frozen=True, slots=True)
class Unit:
    """A residual current device as it really is, whatever was noted of it.

    Currents [mA], times [ms]. `own` is the trip current on AC with nothing else
    flowing; `half_wave` the ratio to it of the r.m.s. trip current on a half wave;
    `smooth` the trip current on smooth DC, infinite where it senses none, with its own
    `smooth_lag`. `waits` is the wait for the useful half cycle, at a start at 0° where it
    is positive, at 180° where it is negative. A mechanism may take `first_extra` or `later_extra`
    longer at its first operation and after; infinite means that it does not open. It does so
    in a share `sticks` of its operations. On one side, 0° and positive or 180° and negative,
    the trip current may be `weak_factor` times as high; infinite means that the side is dead.
    """

    rated: float
    type: str
    own: float
    half_wave: float
    opening: float
    lag: float
    waits: float
    button_current: float
    smooth: float = inf
    smooth_lag: float = 0.0
    delay: str = "none"
    button_works: bool = True
    first_extra: float = 0.0
    later_extra: float = 0.0
    sticks: float = 1.0
    weak_side: str = ""
    weak_factor: float = 1.0


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What the circuit does to the device while it is tested; currents [mA].

    `loads_on` and `at_board` hold where a test does not say. `leakage` flows with the
    cosine `leakage_cosine` to the test current. `dc_shift` is the factor by which the
    DC of the loads multiplies the trip current. `shunted` is the share of the test
    current that returns through the device by a neutral-to-earth path; `board_part` of
    it at the board. `borrowed` flows in phase while loads run. `earthed` is the share
    of the test current that can flow at all.
    """

    loads_on: bool
    at_board: bool
    leakage: float
    leakage_cosine: float
    dc: float = 0.0
    dc_shift: float = 1.0
    shunted: float = 0.0
    board_part: float = 1.0
    borrowed: float = 0.0
    disturbs: bool = False
    earthed: float = 1.0


@dataclass(frozen=True, slots=True)
class Handling:
    """What instrument and person did, beside what was noted.

    `excess` is the share by which the test current exceeds its set value. The set
    current was really multiplied by `scale_half`, `scale_one` or `scale_more`, for
    tests below, at and above the rating. On swapped tests the waveform was half wave
    where AC was noted, and the other way. `runs_on` is the probability that the
    timer runs on though the device opens.
    """

    excess: float
    scale_half: float = 1.0
    scale_one: float = 1.0
    scale_more: float = 1.0
    times_swapped: bool = False
    ramp_swapped: bool = False
    runs_on: float = 0.0


@dataclass(frozen=True, slots=True)
class Possible:
    """A device, its circuit and its handling, with another device in series where it matters."""

    unit: Unit
    surroundings: Surroundings
    handling: Handling
    other: Unit | None = None
