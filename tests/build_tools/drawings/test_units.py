"""A length in a drawing is in units that every engine takes.

In an attribute of SVG a unit that depends on letters or on the window is nought in some engines
(WebKit bug 258003, "SVGLengthValue should support rem"). Plain numbers and per cent never are.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from build_tools.files import paths
from tests.build_tools.drawings.test_every_picture import WITH_PICTURES, asked_for

RELATIVE = r"(?:r?em|r?ex|r?ch|r?ic|r?lh|r?cap|[sld]?v(?:w|h|i|b|min|max)|cq(?:w|h|i|b|min|max))"
LENGTH = re.compile(rf"""["'`=](?:[^"'`]*[\s,]|)-?(?:[0-9.]+|\$?\{{[^{{}}]*\}}){RELATIVE}\b""")
DRAWING = sorted(
    path.relative_to(paths.ROOT)
    for folder, kind in (
        (paths.TOOLS / "browser", "*.js"),
        (paths.TOOLS / "drawings", "*.py"),
        (paths.ROOT / "docs", "*.svg"),
    )
    for path in folder.rglob(kind)
)


@pytest.mark.parametrize("text", ['y: "3.35rem"', "r: '.3em'", 'y1="${at}vw"', "`M0 ${y}rem`"])
def test_such_a_length_is_found(text: str) -> None:
    """However it is written."""
    assert LENGTH.search(text)


@pytest.mark.parametrize("file", DRAWING, ids=str)
def test_nothing_that_draws_writes_such_a_length(file: Path) -> None:
    """Neither a script nor a drawing of the build."""
    text = (paths.ROOT / file).read_text(encoding="utf-8")

    assert LENGTH.findall(text) == []


@pytest.mark.parametrize("page", WITH_PICTURES)
def test_no_picture_holds_such_a_length(page: str) -> None:
    """As it stands on the page."""
    assert [one.key for one in asked_for(page) if LENGTH.search(one.svg)] == []
