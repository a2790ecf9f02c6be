"""Where the parts of a drawn reading lie, as any engine measures them."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import Any

CASE = (
    "checkers/readings/#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=ramp&readings.0.waveform=ac&readings.0.value=21+mA"
)  # a type A trips between 15 mA and 30 mA of alternating current (IEC 61008-1, 5.3.5 and table 2)
WORDS = ("too low", "allowed", "too high")
# The words that have room on a phone by the size of letters, of which 125% is the usual one. A word
# such as "too high" takes 3.4 rem, and the strip has 17.4, 11.6 and 7.4 rem: zones of 37, 37, 26%.
ROOM = {"125%": WORDS, "175%": WORDS[:2], "250%": ()}

# The letters of the page are in the first place what it takes the height of a strip from.
MEASURE = """
document.documentElement.style.fontSize = arguments[0];
const svg = document.querySelector(".strip");
const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
const { width, height } = svg.getBoundingClientRect();
const parts = [...svg.querySelectorAll("rect, line, text, circle")]
  .filter((part) => !part.closest("defs") && part.getAttribute("display") !== "none")
  .map((part) => {
    const box = part.getBBox();
    return { kind: part.classList[0] ?? "lines", text: part.textContent, left: box.x / width,
      right: (box.x + box.width) / width, top: box.y / rem, bottom: (box.y + box.height) / rem };
  });
return { height: height / rem, parts }
"""


@dataclass(frozen=True)
class Part:
    """A part's box: across as a share of the strip's width, down in letters [rem]."""

    kind: str
    text: str
    left: float
    right: float
    top: float
    bottom: float

    def overlaps(self, other: Part) -> bool:
        """Tell whether two boxes share more than an edge."""
        beside = self.right <= other.left or other.right <= self.left
        return not (beside or self.bottom <= other.top or other.bottom <= self.top)


def check(measured: dict[str, Any], *words: str) -> None:
    """Hold what was measured of CASE against where each part belongs, and which words have room.

    Down [rem]: zones 0.05 to 1.2, a limit line 0.05 to 2.45, the reading at 1.85, figures at 3.35,
    in a strip of 3.5. Across: the scale ends at 1.35 times 30 mA, which is 40.5 mA.
    """
    parts = [Part(**one) for one in measured["parts"]]
    texts = {one.text: one for one in parts if one.right > one.left and one.text}
    zones = [one for one in parts if one.kind == "strip__zone"]
    named = dict(zip(WORDS, zones, strict=True))
    lines = [one for one in parts if one.kind == "strip__limit"]
    (mark,) = (one for one in parts if one.kind == "strip__mark")

    assert near(measured["height"], 3.5)
    assert list(texts) == ["15 mA", "30 mA", "0", *words]
    assert all(near(one.top, 0.05) and near(one.bottom, 1.2) for one in zones)
    assert all(near(one.top, 0.05) and near(one.bottom, 2.45) for one in lines)
    assert near(lines[0].left, 15 / 40.5, 0.01)
    assert near(lines[1].left, 30 / 40.5, 0.01)
    assert near((mark.left + mark.right) / 2, 21 / 40.5, 0.01)
    assert near((mark.top + mark.bottom) / 2, 1.85)
    assert near(mark.bottom - mark.top, 0.6)
    for word in words:
        assert named[word].left < texts[word].left < texts[word].right < named[word].right
        assert named[word].top < texts[word].top < texts[word].bottom < named[word].bottom
    assert all(texts[figure].top > lines[0].bottom for figure in ("0", "15 mA", "30 mA"))
    assert [pair for pair in combinations(texts.values(), 2) if pair[0].overlaps(pair[1])] == []


def near(value: float, expected: float, apart: float = 0.03) -> bool:
    """Tell whether two measures are as good as the same."""
    return abs(value - expected) <= apart
