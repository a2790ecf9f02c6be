"""How likely a reading is, for every member of a cloud; bounds and words count as such."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log, pi, sqrt
from typing import NamedTuple

from checkers.domain.quantities.measured_value import Measured, Said
from checkers.judgement.inference.weighing.samples import Columns
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.prediction import opens_unseen
from checkers.physics.response.stray_readings import EITHER, chance_beyond, density
from checkers.physics.response.timing import below
from checkers.physics.scatter import SCATTER

MISREAD = SCATTER.misread.typical
MISSEEN = SCATTER.misseen.typical
NEIGHBOURS = 1.1  # a member stands for its neighbours too, so its figures spread a little wider
FAR = 9.0  # deviations beyond which a figure can only be a stray
ROOT_OF_TWO_PI = sqrt(2.0 * pi)


class Strays(NamedTuple):
    """The share of readings that say nothing, and by which power large ones are rarer."""

    share: float
    tail: float


TAIL = SCATTER.stray_tail.typical
USUAL = Strays(MISREAD, SCATTER.unmodelled_tail.typical)
NONE = Strays(1e-9, TAIL)  # above zero, so that a logarithm can be taken


def one_of(readings: int) -> Strays:
    """Return the strays where one reading of so many is wrong, whichever it is."""
    return Strays(1.0 / max(1, readings), TAIL)


def log_likelihoods(
    columns: Columns, attempt: Attempt, measured: Measured, strays: Strays = USUAL
) -> list[float]:
    """Return the logarithm of the likelihood of a reading for each member of a cloud.

    Inputs: the cloud's predictions; the test; the reading: a figure [ms or mA], a bound
    or a word; the readings that say nothing. A figure has a density, a bound the
    probability of everything it allows.
    """
    stray = strays.share * stray_likelihood(attempt, measured, strays.tail)
    if measured.said is Said.FIGURE:
        return _of_figure(columns, measured.value, 1.0 - strays.share, stray)
    sound = 1.0 - strays.share
    return [log(sound * chance + stray) for chance in _chances(columns, attempt, measured)]


def stray_likelihood(attempt: Attempt, measured: Measured, tail: float = TAIL) -> float:
    """Return how likely a stray is to show a reading: a density [per ms or mA] for a figure."""
    said = measured.said
    if said is Said.FIGURE:
        return density(attempt, measured.value, tail)
    if attempt.is_button or said in (Said.OPERATES, Said.DOES_NOT_OPERATE):
        return EITHER
    beyond = chance_beyond(attempt, _bound(attempt, measured), tail)
    return 1.0 - beyond if said in (Said.LESS_THAN, Said.TRIPPED) else beyond


def log_likelihoods_seen(
    operated: Sequence[tuple[Columns, bool]], *, seen_to_open: bool, missed: float = MISSEEN
) -> list[float]:
    """Return the logarithm of how likely it is that someone saw the device open, or not.

    Inputs: for each test, the cloud's predictions and whether an operation was shown;
    what was seen, and how often that is wrong. Where it was seen to open, that speaks of the
    tests which showed no operation; where it was not, of all: it stayed closed in each.
    """
    unseen = [one for one in operated if not one[1]]
    asked = (unseen or list(operated)) if seen_to_open else list(operated)
    stays = [1.0] * len(asked[0][0].shows)
    for columns, shown in asked:
        for at, opens in enumerate(_opens(columns, shown=shown)):
            stays[at] *= 1.0 - opens
    chances = ((1.0 - one if seen_to_open else one) for one in stays)
    return [log((1.0 - missed) * one + missed * (1.0 - one)) for one in chances]


def _opens(columns: Columns, *, shown: bool) -> Sequence[float]:
    """Return the chance that the device opened, given whether an operation was shown."""
    if shown:
        return columns.opens_shown
    pairs = zip(columns.opens_unseen, columns.shows, strict=True)
    return [opens_unseen(unseen, shows) for unseen, shows in pairs]


def _of_figure(columns: Columns, value: float, sound: float, floor: float) -> list[float]:
    share = sound / ROOT_OF_TWO_PI
    stray = log(floor)
    found = []
    for shows, mean, spread in zip(columns.shows, columns.mean, columns.spread, strict=True):
        wide = NEIGHBOURS * spread
        score = (value - mean) / wide
        if -FAR < score < FAR and shows:
            found.append(log(share * shows * exp(-0.5 * score * score) / wide + floor))
        else:
            found.append(stray)
    return found


def _chances(columns: Columns, attempt: Attempt, measured: Measured) -> Sequence[float]:
    said = measured.said
    if said is Said.OPERATES:
        return columns.shows
    if said is Said.DOES_NOT_OPERATE:
        return [1.0 - shows for shows in columns.shows]
    sooner = shown_below(columns, _bound(attempt, measured))
    if attempt.is_button:
        sooner = list(columns.shows)
    return sooner if said in (Said.LESS_THAN, Said.TRIPPED) else [1.0 - one for one in sooner]


def _bound(attempt: Attempt, measured: Measured) -> float:
    """Return the bound [ms or mA] that was noted, or up to which the instrument waits."""
    if measured.said in (Said.MORE_THAN, Said.LESS_THAN):
        return measured.value
    return attempt.current if attempt.is_ramp else attempt.window


def shown_below(columns: Columns, bound: float) -> list[float]:
    """Return the chance that a figure below a bound [ms or mA] is shown, for each member."""
    rows = zip(columns.shows, columns.mean, columns.spread, strict=True)
    return [
        shows * below((bound - mean) / spread) if shows else 0.0 for shows, mean, spread in rows
    ]
