"""What every test needs before the first one is read."""

from __future__ import annotations

import os
from pathlib import Path

# Hypothesis then keeps its examples with all else that is built or fetched.
os.environ.setdefault(
    "HYPOTHESIS_STORAGE_DIRECTORY",
    str(Path(__file__).resolve().parent.parent / ".build" / "cache" / "hypothesis"),
)

from hypothesis import settings  # reads its directory when it is imported

# A busy machine fails no test: nothing is judged by how long an example takes.
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
