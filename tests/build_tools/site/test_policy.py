"""Each page of a site allows its own inline scripts, and no others."""

from __future__ import annotations

import base64
import hashlib
from pathlib import Path

import pytest

from build_tools.site.policy import inline_scripts, policy_for, protect, sent_headers, with_policy

HEAD = '<html><head><meta charset="utf-8">'
RUN = "let a = 1"


def _page(*scripts: str) -> str:
    return f"{HEAD}{''.join(scripts)}</head></html>"


def test_only_scripts_that_run_are_counted() -> None:
    """A file and a block of data need no hash; an inline script does."""
    page = _page(
        f"<script>{RUN}</script>",
        '<script src="file.js"></script>',
        '<script id="data" type="application/json">{}</script>',
    )

    assert inline_scripts(page) == [RUN]


def test_the_policy_holds_the_hash_that_a_browser_computes() -> None:
    """The hash is the base64 SHA-256 of the text between the tags (CSP Level 2, 7.17.1)."""
    digest = base64.b64encode(hashlib.sha256(RUN.encode()).digest()).decode()

    policy = policy_for([_page(f"<script>{RUN}</script>")])

    assert f"script-src 'self' 'wasm-unsafe-eval' 'sha256-{digest}'" in policy
    assert "unsafe-inline" not in policy
    assert "'unsafe-eval'" not in policy


def test_what_a_host_sends_forbids_all_that_a_page_forbids_but_by_hash() -> None:
    """Rule by rule the same, so that a worker may no more than a page; no hash to keep current."""
    of_page = policy_for([_page(f"<script>{RUN}</script>")]).split("; ")
    sent = sent_headers()["Content-Security-Policy"].split("; ")

    differing = set(of_page) ^ set(sent)
    assert {one.split()[0] for one in differing} == {"script-src"}
    assert "sha256-" not in str(sent)
    assert "'unsafe-eval'" not in str(sent)


def test_every_page_gets_the_same_policy_first(tmp_path: Path) -> None:
    """A page that replaces another in place then brings nothing the first one forbids."""
    (tmp_path / "deep").mkdir()
    (tmp_path / "index.html").write_text(_page("<script>one</script>"))
    (tmp_path / "deep" / "index.html").write_text(_page("<script>two</script>"))

    protect(tmp_path)

    pages = [path.read_text() for path in tmp_path.rglob("*.html")]
    metas = {page.removeprefix(HEAD).split(">", maxsplit=1)[0] for page in pages}
    assert len(metas) == 1
    assert metas.pop().count("sha256-") == 2


def test_a_page_without_a_place_for_it_stops_the_build() -> None:
    """No page goes out unprotected."""
    with pytest.raises(ValueError, match="lacks the line"):
        with_policy("<html></html>", "x")
