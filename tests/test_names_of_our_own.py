"""What is shown and typed as an example is a term of the trade, or a word of our own."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).parent.parent
SHOWN = ("docs", "checkers/catalogue", "checkers/data", "build_tools", "README.md", "tests/cases")
LIKENESS = re.compile(
    r">\s*310\b|>\s*33 ?mA\b|\btrp\b|\blim\b|\d+x \d+[.,]\d ?ms \d+x", re.IGNORECASE
)
READ_IN_SILENCE = "# Short code words"


def test_no_example_calls_an_instrument_or_its_program_to_mind() -> None:
    """Such notations are still read; where that itself is tested, a note says so."""
    found = []
    for place in SHOWN:
        top = ROOT / place
        for path in [top] if top.is_file() else sorted(top.rglob("*")):
            if path.suffix not in {".md", ".py", ".toml", ".csv", ".html", ".js", ".j2"}:
                continue
            text = path.read_text(encoding="utf-8")
            noted = [one for one in text.split("\n\n") if READ_IN_SILENCE not in one]
            found += [(path.name, one.group()) for one in LIKENESS.finditer("\n\n".join(noted))]

    assert found == []
