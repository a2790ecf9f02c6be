"""What a leakage list comes to, in words: at worst, at least, and with everything on."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.leakage.parts import NOISE
from checkers.judgement.leakage.standing_leakage import StandingLeakage
from checkers.judgement.limits.safe_rounding import rounded_down, rounded_up


def list_words(leakage: StandingLeakage) -> str:
    """Return what a list comes to, as a sentence without its full stop."""
    parts = [_worst(leakage), _most(leakage), _least(leakage), _together(leakage)]
    return "".join(part for part in parts if part)


def shown(current: float) -> str:
    """Return a current [mA] in words, rounded up."""
    return format_quantity(rounded_up(current, 3), "mA")


def _worst(leakage: StandingLeakage) -> str:
    expected = shown(leakage.expected)
    if leakage.is_on_one_line:
        return f"The list adds up to {expected}"
    if leakage.lines_are_open:
        return f"The list adds up to {expected} if all of it is on one line"
    return f"In the worst combination of what is on and of a missing line the list makes {expected}"


def _most(leakage: StandingLeakage) -> str:
    more = leakage.at_most > leakage.expected + NOISE
    range_words = f", and may be {shown(leakage.at_most)}" if more else ""
    open_end = "" if leakage.has_upper_figures else ", with no upper figure known for some"
    return f"{range_words}{open_end}"


def _least(leakage: StandingLeakage) -> str:
    """Return what it is sure to reach, where that is less than the worst."""
    least = rounded_down(leakage.must_be, 3)
    if least <= 0.0 or leakage.must_be >= leakage.expected - NOISE:
        return ""
    return f", and at least {format_quantity(least, 'mA')} however it lies"


def _together(leakage: StandingLeakage) -> str:
    if leakage.is_on_one_line or leakage.all_on is None:
        return ""
    return f" ({shown(leakage.all_on)} with everything on, which decides nothing)"
