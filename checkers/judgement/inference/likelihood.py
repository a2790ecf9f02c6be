"""How likely a reading is, for every member of a cloud; bounds and words count as such."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log, pi, sqrt

from checkers.domain.measured import Measured, Said
from checkers.judgement.inference.clouds import Columns
from checkers.physics.response.attempt import Attempt
from checkers.physics.response.figures import FIGURES
from checkers.physics.response.prediction import opens_unseen
from checkers.physics.response.timing import below

MISREAD = FIGURES.misread.typical
MISSEEN = FIGURES.misseen.typical
NEIGHBOURS = 1.1  # a member stands for its neighbours too, so its figures spread a little wider
FAR = 9.0  # deviations beyond which a figure can only be a freak
ROOT_OF_TWO_PI = sqrt(2.0 * pi)
RAMP_REACH = 3.0  # a freak ramp reading may lie anywhere up to so many times the rating


def log_likelihoods(columns: Columns, attempt: Attempt, measured: Measured) -> list[float]:
    """Return the logarithm of the likelihood of a reading for each member of a cloud.

    Inputs: the cloud's predictions; the test; the reading: a figure [ms or mA], a bound
    or a word. A figure has a density, a bound the probability of everything it allows.
    Assumption: a small share of all readings are freaks that could show anything.
    """
    if measured.said is Said.FIGURE:
        return _of_figure(columns, measured.value, MISREAD / freak_range(attempt))
    chances = _chances(columns, attempt, measured)
    floor = 0.5 * MISREAD
    return [log((1.0 - MISREAD) * chance + floor) for chance in chances]


def freak_range(attempt: Attempt) -> float:
    """Return over which range [ms or mA] a freak reading may lie."""
    return RAMP_REACH * attempt.rated if attempt.is_ramp else attempt.window


def log_likelihoods_seen(
    operated: Sequence[tuple[Columns, bool]], *, seen_to_open: bool
) -> list[float]:
    """Return the logarithm of how likely it is that someone saw the device open, or not.

    Inputs: for each test, the cloud's predictions and whether an operation was shown;
    what was seen. Where it was seen to open, that speaks of the tests which showed no
    operation; where it was not, of those which did.
    """
    asked = [one for one in operated if one[1] is not seen_to_open] or list(operated)
    stays = [1.0] * len(asked[0][0].shows)
    for columns, shown in asked:
        for at, opens in enumerate(_opens(columns, shown=shown)):
            stays[at] *= 1.0 - opens
    chances = ((1.0 - one if seen_to_open else one) for one in stays)
    return [log((1.0 - MISSEEN) * one + MISSEEN * (1.0 - one)) for one in chances]


def _opens(columns: Columns, *, shown: bool) -> Sequence[float]:
    """Return the chance that the device opened, given whether an operation was shown."""
    if shown:
        return columns.opens_shown
    pairs = zip(columns.opens_unseen, columns.shows, strict=True)
    return [opens_unseen(unseen, shows) for unseen, shows in pairs]


def _of_figure(columns: Columns, value: float, floor: float) -> list[float]:
    share = (1.0 - MISREAD) / ROOT_OF_TWO_PI
    freak = log(floor)
    found = []
    for shows, mean, spread in zip(columns.shows, columns.mean, columns.spread, strict=True):
        wide = NEIGHBOURS * spread
        score = (value - mean) / wide
        if -FAR < score < FAR and shows:
            found.append(log(share * shows * exp(-0.5 * score * score) / wide + floor))
        else:
            found.append(freak)
    return found


def _chances(columns: Columns, attempt: Attempt, measured: Measured) -> Sequence[float]:
    said = measured.said
    if said is Said.OPERATES:
        return columns.shows
    if said is Said.DOES_NOT_OPERATE:
        return [1.0 - shows for shows in columns.shows]
    if said in (Said.MORE_THAN, Said.LESS_THAN):
        bound = measured.value
    else:
        bound = attempt.current if attempt.is_ramp else attempt.window
    sooner = shown_below(columns, bound)
    if attempt.is_button:
        sooner = list(columns.shows)
    return sooner if said in (Said.LESS_THAN, Said.TRIPPED) else [1.0 - one for one in sooner]


def shown_below(columns: Columns, bound: float) -> list[float]:
    """Return the chance that a figure below a bound [ms or mA] is shown, for each member."""
    rows = zip(columns.shows, columns.mean, columns.spread, strict=True)
    return [
        shows * below((bound - mean) / spread) if shows else 0.0 for shows, mean, spread in rows
    ]
