"""How does smooth DC through the sensing core move the AC trip current?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from checkers.domain.checker import Checker, Example
from checkers.domain.device.device import Device
from checkers.domain.device.readings import Circuit, Instrument
from checkers.domain.inputs.fields import group, quantity
from checkers.domain.quantities.quantity import format_quantity
from checkers.domain.question import Question
from checkers.domain.verdicts import Figure, Outcome, Result
from checkers.judgement.case import Case
from checkers.judgement.dc.bias import judge_dc_bias
from checkers.judgement.dc.bias_case import DcBiasCase
from checkers.physics.core.button_under_bias import greatest_button_current
from checkers.physics.core.parameters import CORE
from checkers.wording.book import part


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs(Question):
    """A device, the smooth DC through it, and its trip current without DC if it was measured."""

    device: Device = group(Device, "Device", default=Device)
    dc_residual: float = quantity("dc_residual")
    own_trip_current: float | None = quantity(
        "trip_current",
        "Trip current without DC",
        default=None,
        explain="From a rising AC test with no DC flowing; from the rating if left out.",
    )

    @property
    def asked(self) -> DcBiasCase:
        """What the judgement is about."""
        circuit = Circuit(loads="off", dc_residual=self.dc_residual)
        case = Case(self.device, circuit, Instrument(), self.local_code, self.day)
        return DcBiasCase(case, self.dc_residual, self.own_trip_current)


def check(inputs: Inputs) -> Result:
    """Judge the DC against what the type bears, and say where the AC trip current goes.

    Inputs: a device, the smooth DC through it, its own trip current.
    Result: the trip current with the DC flowing [mA] with its band, whether the test button
    still works, and a curve. Only DC within the declared tolerance passes.
    """
    asked = inputs.asked
    return Result(
        findings=judge_dc_bias(asked),
        answer=_answer(asked) if asked.modelled else {},
        cautions=(part("dc.spread-of-model"),),
    )


def _answer(asked: DcBiasCase) -> dict[str, Any]:
    trip, own = asked.trip, asked.own
    return {
        "ac_trip_current": _current(trip.typical),
        "low": _current(trip.low),
        "high": _current(trip.high),
        "button_operates": asked.button.value,
        "button_current": _current(greatest_button_current(asked.rated)) if asked.rated else "",
        "own_trip_current": _current(own.typical),
        "opens_on_the_dc": asked.opens_on_the_dc if asked.type_known else part("dc.not-known"),
        "dc_tolerated": _tolerated(asked),
        "figures_for_type": asked.modelled_type,
        "points": [[_round(one.dc_residual), _round(one.trip.typical)] for one in asked.curve],
        "band": [
            {
                "dc_residual": _round(one.dc_residual),
                "low": _round(one.trip.low),
                "high": _round(one.trip.high),
            }
            for one in asked.curve
        ],
        "known_points": _known_points(asked),
    }


def _tolerated(asked: DcBiasCase) -> Figure | str:
    if asked.tolerated is not None:
        return _current(asked.tolerated)
    return part("dc.none-declared" if asked.type_known else "dc.not-known")


def _known_points(asked: DcBiasCase) -> list[dict[str, Any]]:
    """Return the points to draw in beside the curve: from the bench, and declared."""
    device = asked.case.device
    points = [
        {
            "dc_residual": _current(one.dc_residual),
            "ac_trip_current": _current(one.trip_current),
            "says": part("dc.bench-point", current=format_quantity(one.own_trip_current, "mA")),
            "source": one.citation.words,
            "kind": "measured",
        }
        for one in CORE.bench_points
        if (one.type, one.rated_residual_current) == (device.type, asked.rated)
    ]
    row = asked.tolerated_row
    if asked.tolerated is not None and asked.rated is not None and row is not None:
        points.append(
            {
                "dc_residual": _current(asked.tolerated),
                "ac_trip_current": _current(asked.rated),
                "says": part("dc.declared-point"),
                "source": row.citation.words,
                "kind": "declared",
            }
        )
    return points


def _current(value: float) -> Figure:
    return Figure(_round(value), "mA")


def _round(value: float) -> float:
    return round(value, 1)


BLINDED = Example(
    title="A 30 mA type AC device with 50 mA of smooth DC: blind, and the button works",
    request={
        "device": {"type": "AC", "rated_residual_current": "30 mA"},
        "dc_residual": "50 mA",
        "own_trip_current": "27 mA",
    },
    outcome=Outcome.FAIL,
)
WITHIN = Example(
    title="A 30 mA type A device with 5 mA of smooth DC",
    request={
        "device": {"type": "A", "rated_residual_current": "30 mA"},
        "dc_residual": "5 mA",
        "own_trip_current": "22 mA",
    },
    outcome=Outcome.PASS,
)
SENSES_DC = Example(
    title="A 30 mA type B device with more DC than it declares, less than opens it",
    request={
        "device": {"type": "B", "rated_residual_current": "30 mA"},
        "dc_residual": "20 mA",
    },
    outcome=Outcome.CANNOT_SAY,
)
TYPE_NOT_KNOWN = Example(
    title="A 30 mA device of unknown type with 10 mA of smooth DC",
    request={"device": {"rated_residual_current": "30 mA"}, "dc_residual": "10 mA"},
    outcome=Outcome.CANNOT_SAY,
)

CHECKER = Checker(
    slug="dc-bias",
    title="Smooth DC in the core",
    question="How does smooth DC through the sensing core move the AC trip current?",
    inputs=Inputs,
    check=check,
    examples=(BLINDED, WITHIN, SENSES_DC, TYPE_NOT_KNOWN),
)
