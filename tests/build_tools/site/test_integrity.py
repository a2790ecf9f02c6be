"""Every script that a page starts is bound to its contents, wherever the page lies."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from pathlib import Path

import pytest

from build_tools.site.integrity import bind

ENTRY, LATE, THEME = b"entry", b"late", b"theme"


def _hash(content: bytes) -> str:
    # Subresource Integrity, 3.1: the algorithm, a dash, the digest in base64.
    return "sha256-" + base64.b64encode(hashlib.sha256(content).digest()).decode()


def _page(way: str) -> str:
    return (
        f'<head><script>inline</script><script type="module" async src="{way}browser/ab/page.js">'
        f'</script></head><body><script nomodule src="{way}assets/theme.js"></script></body>'
    )


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A site of two pages at two depths."""
    for name, content in {
        "browser/ab/page.js": ENTRY,
        "browser/ab/log-page-Xy.js": LATE,
        "assets/theme.js": THEME,
        "index.html": _page("").encode(),
        "checkers/readings/index.html": _page("../../").encode(),
    }.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(content)
    bind(tmp_path)
    return tmp_path


@pytest.mark.parametrize(("place", "way"), [("", ""), ("checkers/readings/", "../../")])
def test_each_script_carries_its_hash(site: Path, place: str, way: str) -> None:
    """The page's own and the theme's; what comes later stands in the map, ahead of them."""
    page = (site / f"{place}index.html").read_text(encoding="utf-8")

    assert (
        f'<script type="module" async src="{way}browser/ab/page.js" integrity="{_hash(ENTRY)}">'
        in page
    )
    assert f'<script nomodule src="{way}assets/theme.js" integrity="{_hash(THEME)}">' in page
    (text,) = re.findall(r'<script type="importmap">(.*?)</script><script type="module"', page)
    assert json.loads(text) == {
        "integrity": {f"{way or './'}browser/ab/log-page-Xy.js": _hash(LATE)}
    }


def test_binding_anew_replaces_what_was_bound(site: Path) -> None:
    """A script that was changed on purpose gets its new hash, once."""
    (site / "browser" / "ab" / "page.js").write_bytes(b"another")

    bind(site)

    page = (site / "index.html").read_text(encoding="utf-8")
    assert page.count("importmap") == 1
    assert page.count("integrity=") == 2
    assert _hash(b"another") in page
    assert _hash(ENTRY) not in page


def test_a_script_that_is_not_there_stops_the_build(site: Path) -> None:
    """No page goes out with a script that no browser would run."""
    (site / "assets" / "theme.js").unlink()

    with pytest.raises(ValueError, match=r"names the script .*assets/theme\.js"):
        bind(site)
