"""How common each cause is before the readings are looked at, with what was measured."""

from __future__ import annotations

from checkers.domain.causes import CAUSES, REMAINDER, STATED
from checkers.judgement.inference.weighing.samples import FEW, cloud
from checkers.physics.condition.circuit_causes import is_blinded
from checkers.physics.condition.knowledge import Known
from checkers.physics.scatter import SCATTER

LEAKAGE = ("leakage-adds", "leakage-opposes")
DC = ("blinded-by-dc", "type-too-low")


def prior_shares(known: Known, tolerated_dc: float, *, loads_may_be_on: bool) -> dict[str, float]:
    """Return the share of each cause, summing to 1; a cause that cannot be is left out.

    Inputs: what is known; the smooth DC [mA] that the type bears; whether loads were,
    or may have been, connected in some test.
    """
    own = known.supply == "own"
    shares = {code: one.prior_for(known.type, own_source=own) for code, one in CAUSES.items()}
    if not loads_may_be_on:
        for code, cause in CAUSES.items():
            shares[code] *= STATED.loads_off if cause.from_loads else 1.0
    shares[REMAINDER] = 1.0 - sum(shares.values())
    if known.leakage is not None and loads_may_be_on:
        _with_leakage(shares, known, known.leakage)
    if known.dc is not None:
        _with_dc(shares, known, exceeds=known.dc > tolerated_dc)
    whole = sum(shares.values())
    return {code: share / whole for code, share in shares.items() if share > 0.0}


def _with_leakage(shares: dict[str, float], known: Known, leakage: float) -> None:
    """Give measured leakage that matters to its causes; take it from them where it is small."""
    if leakage < SCATTER.large_leakage_share.typical * known.rated:
        for code in LEAKAGE:
            shares[code] *= STATED.measured_small
        return
    sound = shares[REMAINDER]
    shares[REMAINDER] = STATED.leakage_keeps * sound
    shares["leakage-adds"] += STATED.leakage_adds * sound
    shares["leakage-opposes"] += STATED.leakage_opposes * sound


def _with_dc(shares: dict[str, float], known: Known, *, exceeds: bool) -> None:
    """Part a sound device with measured DC between being blinded and being of too low a type.

    DC above what the type bears leaves nothing in good order, and neither of the two out:
    the model of the core is not sure enough for that.
    """
    if not exceeds:
        for code in DC:
            shares[code] *= STATED.measured_small
        return
    sound = shares[REMAINDER] + sum(shares[code] for code in DC)
    members = cloud(REMAINDER, known, FEW)
    share = sum(is_blinded(one) for one in members) / len(members)
    blinded = min(1.0 - STATED.dc_keeps, max(STATED.dc_keeps, share))
    shares[REMAINDER] = 0.0
    shares["blinded-by-dc"], shares["type-too-low"] = sound * blinded, sound * (1.0 - blinded)
