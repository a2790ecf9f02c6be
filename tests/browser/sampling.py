"""Cases of one walk: some in every run, the others where the slow tests run too."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import pytest


def sampled(cases: Iterable[Any], always: int) -> list[Any]:
    """Return the cases for a parametrised test, with the mark `slow` on all but the first few.

    Args:
        cases: single values, or tuples of values.
        always: how many run every time.
    """
    return [
        pytest.param(*_values(case), marks=[pytest.mark.slow] if number >= always else [])
        for number, case in enumerate(cases)
    ]


def _values(case: Any) -> tuple[Any, ...]:
    return case if isinstance(case, tuple) else (case,)
