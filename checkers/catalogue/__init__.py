"""The checkers, one a file. CHECKERS is the only list of them."""

from __future__ import annotations

from checkers.catalogue import fault_waveform, readings
from checkers.domain.checker import Checker

CHECKERS: tuple[Checker, ...] = (readings.CHECKER, fault_waveform.CHECKER)
