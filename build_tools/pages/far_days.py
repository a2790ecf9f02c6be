"""The day a copy was built, and how far from it a day may lie before a page remarks it."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path

from build_tools.files.identity import day_of_sources

FAR_DAYS = Path(__file__).with_suffix(".toml")


@cache
def far_days() -> dict[str, str | int]:
    """Return what a page needs for its remark.

    Returns:
        `built`, a day in ISO 8601; `years` after it [a] and `days` before it [d] without a remark.
    """
    table = tomllib.loads(FAR_DAYS.read_text(encoding="utf-8"))
    return {
        "built": day_of_sources().isoformat(),
        "years": table["after_build"]["years"],
        "days": table["before_build"]["days"],
    }
