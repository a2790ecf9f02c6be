"""Things that can be looked at or measured, and what they are in a possible state of affairs."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import log

from checkers.domain.device.device import DeviceType
from checkers.judgement.inference.candidates import CANDIDATES
from checkers.physics.condition.knowledge import Known
from checkers.physics.condition.state import Possible
from checkers.physics.scatter import SCATTER


def log_likelihoods_looked(
    members: Sequence[Possible], known: Known, what: str, strange: bool, wrong: float
) -> list[float]:
    """Return the logarithm of how likely a look is to find what it found, for each member.

    Inputs: the members of a cloud; what is known; what was looked at, and whether it was
    found out of the ordinary; how often such a look is wrong.
    """
    as_found, otherwise = log(1.0 - wrong), log(wrong)
    is_strange = PREDICATES[what]
    return [as_found if is_strange(one, known) is strange else otherwise for one in members]


def _is_another(possible: Possible, known: Known) -> bool:
    unit = possible.unit
    other_type = known.type not in (DeviceType.UNKNOWN, unit.type)
    return unit.rated != known.rated or other_type or unit.delay != known.delay


def _is_set_wrong(possible: Possible, known: Known) -> bool:
    del known
    handling = possible.handling
    scales = (handling.scale_half, handling.scale_one, handling.scale_more)
    return scales != (1.0, 1.0, 1.0) or handling.times_swapped or handling.ramp_swapped


def _leaks(possible: Possible, known: Known) -> bool:
    return possible.surroundings.leakage >= SCATTER.large_leakage_share.typical * known.rated


PREDICATES: dict[str, Callable[[Possible, Known], bool]] = {
    "marking": _is_another,
    "dc": lambda possible, _: possible.surroundings.dc >= CANDIDATES.dc,
    "leakage": _leaks,
    "path": lambda possible, _: possible.surroundings.shunted > 0.0,
    "settings": _is_set_wrong,
    "bond": lambda possible, _: possible.surroundings.earthed < 1.0,
}
