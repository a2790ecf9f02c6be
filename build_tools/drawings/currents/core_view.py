"""How a sensing core sees a residual current: the current, the flux it moves, and the relay."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from build_tools.drawings.scales import Scale
from build_tools.drawings.svg import Picture, Point, group, label, labels, line, path
from checkers.domain.quantities.quantity import format_quantity, parse_quantity
from checkers.physics.core.magnetic_material import Material, next_flux
from checkers.physics.core.parameters import CORE, Scatter
from checkers.physics.core.primary_current import STEPS, Shape, rms_of, steps_of
from checkers.physics.core.sensing_core import Core, settled_cycle, signal_at_own_trip
from checkers.physics.core.trip_band import own_trip_band

CURRENT_PANEL, FLUX_PANEL, RELAY_AT = (8.0, 126.0), (140.0, 258.0), 270.0
FIRST, ROW, HALF = 82.0, 108.0, 32.0
CYCLES_TO_SETTLE = 40
SATURATED = 1.12  # the flux scale reaches a little beyond saturation
SHAPES = {"ac": Shape.SINE, "half-wave": Shape.HALF_WAVE}


@dataclass(frozen=True, slots=True)
class Case:
    """A residual current: its alternating part [mA r.m.s.], its shape and the smooth DC [mA]."""

    title: str
    alternating: float
    shape: Shape
    smooth: float


@dataclass(frozen=True, slots=True)
class Course:
    """A settled mains cycle: the current [mA] and the flux [of saturation], and the relay."""

    currents: tuple[float, ...]
    fluxes: tuple[float, ...]
    share: float


def core_view(cases: list[dict[str, str]], type: str = "AC", rated: str = "30 mA") -> Picture:  # noqa: A002  # the word of the limit tables
    """Draw what a typical core of a type makes of some residual currents.

    Inputs: the currents, each with `title`, and as needed `alternating` ("30 mA"), `shape`
    (ac or half-wave) and `smooth` ("50 mA"); the device.
    """
    own = own_trip_band(parse_quantity(rated, "rated_residual_current")).typical
    core = CORE.cores[type, Scatter.TYPICAL].scaled(own)
    told = [_case(one) for one in cases]
    courses = [course(core, own, case) for case in told]
    return Picture(
        key=f"core-{type}-{len(cases)}-{cases[0]['title']}".replace(" ", "_"),
        title=f"How the core of a typical {rated} type {type} device sees residual currents",
        describes=" ".join(_sentence(a, b) for a, b in zip(told, courses, strict=True)),
        height=FIRST + ROW * len(told) - 56.0,
        parts=(
            *_headings(),
            *(_row(told[n], courses[n], FIRST + ROW * n) for n in range(len(told))),
        ),
        caption=f"A typical type {type} core by the model of the smooth DC checker. Dashed: the "
        "core is saturated there, and its flux can move no further. Devices differ.",
        sources=(f"Model of the core: {CORE.cores[type, Scatter.TYPICAL].note} Calculated here.",),
    )


def _case(told: dict[str, str]) -> Case:
    def amount(key: str) -> float:
        return parse_quantity(told[key], "dc_residual") if key in told else 0.0

    shape = SHAPES[told.get("shape", "ac")]
    return Case(told["title"], amount("alternating"), shape, amount("smooth"))


def course(core: Core, own: float, case: Case) -> Course:
    """Return a settled cycle of a core, from a zero of the sine on.

    Inputs: the core; the device's own trip current [mA r.m.s.]; the residual current.
    Result: `share` is the relay's signal over what it needs to open the device.
    """
    unit = sqrt(2.0) * own
    peak = case.alternating / rms_of(case.shape, 1.0) / unit
    bias = case.smooth / unit
    fields = [(bias + peak * value, core.burden / length) for value, length in _from_zero(case)]
    material, flux = Material(core.knee, core.coercive), 0.0
    for _ in range(CYCLES_TO_SETTLE):
        fluxes = []
        for field, drag in fields:
            flux = next_flux(flux, field, drag, material)
            fluxes.append(flux)
    signal = settled_cycle(core, bias, peak, case.shape).signal(core.relay)
    share = signal / signal_at_own_trip(core)
    return Course(tuple(field * unit for field, _ in fields), tuple(fluxes), share)


def _from_zero(case: Case) -> tuple[tuple[float, float], ...]:
    """Return the steps of a cycle begun at a rising zero; the model begins at a crest."""
    steps = steps_of(case.shape, 1.0)
    start = 3 * STEPS // 4
    return (*steps[start:], *steps[:start])


def _headings() -> tuple[str, ...]:
    return tuple(
        label((x, 16.0), words, kind="picture__text--soft")
        for x, words in (
            (CURRENT_PANEL[0], "residual current"),
            (FLUX_PANEL[0], "flux in the core"),
            (RELAY_AT, "relay"),
        )
    )


def _row(case: Case, drawn: Course, middle: float) -> str:
    reach = max(abs(current) for current in drawn.currents) or 1.0
    current_at = Scale(-reach, reach, middle + HALF, middle - HALF)
    flux_at = Scale(-SATURATED, SATURATED, middle + HALF, middle - HALF)
    saturation = [
        line(
            (FLUX_PANEL[0], flux_at.at(side)),
            (FLUX_PANEL[1], flux_at.at(side)),
            "picture__axis picture__axis--dashed",
        )
        for side in (-1.0, 1.0)
    ]
    opens = drawn.share >= 1.0
    return group(
        "picture__row",
        label((CURRENT_PANEL[0], middle - HALF - 8.0), case.title, kind="picture__text--strong"),
        _zero(CURRENT_PANEL, current_at.at(0.0)),
        path(_points(drawn.currents, CURRENT_PANEL, current_at), "picture__line"),
        _zero(FLUX_PANEL, flux_at.at(0.0)),
        *saturation,
        path(_points(drawn.fluxes, FLUX_PANEL, flux_at), "picture__line"),
        labels(
            (RELAY_AT, middle - 4.0),
            ("opens" if opens else "holds",),
            kind="picture__text--large",
        ),
        label((RELAY_AT, middle + 14.0), _gets(drawn.share)),
        label((RELAY_AT, middle + 30.0), "of its need", kind="picture__text--soft"),
    )


def _gets(share: float) -> str:
    return "over twice" if share > 2.0 else f"{100.0 * share:.0f} %"


def _zero(panel: tuple[float, float], y: float) -> str:
    return line((panel[0], y), (panel[1], y), "picture__level")


def _points(values: tuple[float, ...], panel: tuple[float, float], scale: Scale) -> list[Point]:
    width = (panel[1] - panel[0]) / len(values)
    return [(panel[0] + width * (n + 0.5), scale.at(value)) for n, value in enumerate(values)]


def _sentence(case: Case, drawn: Course) -> str:
    low, high = min(drawn.fluxes), max(drawn.fluxes)
    return (
        f"{case.title}: the current reaches {format_quantity(max(drawn.currents), 'mA', 3)}; the "
        f"flux moves between {100.0 * low:.0f} % and {100.0 * high:.0f} % of saturation; the "
        f"relay gets {_gets(drawn.share)} of what it needs and the device "
        f"{'opens' if drawn.share >= 1.0 else 'holds'}."
    )
