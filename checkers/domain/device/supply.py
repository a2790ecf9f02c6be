"""How a circuit and what hangs on it are fed: one phase, two lines or three phases."""

from __future__ import annotations

from checkers.domain.inputs.fields import Labelled


class Supply(Labelled):
    """How equipment is fed."""

    SINGLE_PHASE = "single-phase", "Single-phase: line and neutral"
    LINE_TO_LINE = "line-to-line", "Single-phase between two lines"
    THREE_PHASE = "three-phase", "Three-phase"
