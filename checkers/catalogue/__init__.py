"""The checkers, one a file. CHECKERS is the only list of them."""

from __future__ import annotations

from checkers.catalogue import readings
from checkers.domain.checker import Checker

CHECKERS: tuple[Checker, ...] = (readings.CHECKER,)
