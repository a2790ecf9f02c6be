"""What a leakage list comes to, in words: at worst, at least, and with everything on."""

from __future__ import annotations

from checkers.domain.quantities.quantity import format_quantity
from checkers.judgement.leakage.parts import NOISE
from checkers.judgement.leakage.standing_leakage import StandingLeakage
from checkers.judgement.limits.safe_rounding import rounded_down, rounded_up
from checkers.wording.book import part


def list_words(leakage: StandingLeakage) -> str:
    """Return what a list comes to, as a sentence without its full stop."""
    return _worst(leakage) + _most(leakage) + _least(leakage) + _together(leakage)


def shown(current: float) -> str:
    """Return a current [mA] in words, rounded up."""
    return format_quantity(rounded_up(current, 3), "mA")


def _worst(leakage: StandingLeakage) -> str:
    expected = shown(leakage.expected)
    if leakage.is_on_one_line:
        return part("leakage.list-adds-up", expected=expected)
    if leakage.lines_are_open:
        return part("leakage.list-adds-up-on-one-line", expected=expected)
    return part("leakage.list-in-worst-combination", expected=expected)


def _most(leakage: StandingLeakage) -> str:
    more = leakage.at_most > leakage.expected + NOISE
    most = part("leakage.list-may-be", most=shown(leakage.at_most)) if more else ""
    known = leakage.has_upper_figures
    return most + ("" if known else part("leakage.list-has-no-upper-figure"))


def _least(leakage: StandingLeakage) -> str:
    """Return what it is sure to reach, where that is less than the worst."""
    least = rounded_down(leakage.must_be, 3)
    if least <= 0.0 or leakage.must_be >= leakage.expected - NOISE:
        return ""
    return part("leakage.list-at-least", least=format_quantity(least, "mA"))


def _together(leakage: StandingLeakage) -> str:
    if leakage.is_on_one_line or leakage.all_on is None:
        return ""
    return part("leakage.list-with-everything-on", current=shown(leakage.all_on))
