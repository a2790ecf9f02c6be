"""The content-security policy: the site's own files, and the theme's inline scripts by hash."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable
from pathlib import Path

INLINE = re.compile(r"<script(?P<attributes>(?:\s[^>]*)?)>(?P<text>.*?)</script>", re.DOTALL)
DATA = re.compile(r"""type=["']?application/(?:ld\+)?json""")
START = '<meta charset="utf-8">'

# Python runs as WebAssembly, which needs the one word beside 'self'; nothing here makes
# scripts from text. Styles and images are files of the site, icons of the theme are data.
RULES = {
    "default-src": "'none'",
    "script-src": "'self' 'wasm-unsafe-eval'",
    "style-src": "'self'",
    "img-src": "'self' data:",
    "font-src": "'self'",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'none'",
}


def protect(site: Path) -> None:
    """Put one policy into every page of a built site.

    One for all, since a page that replaces another in place keeps the policies of both.
    Raises ValueError where a page has no place for it.
    """
    pages = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    policy = policy_for(pages.values())
    for path, page in pages.items():
        path.write_text(with_policy(page, policy), encoding="utf-8", newline="\n")


def policy_for(pages: Iterable[str]) -> str:
    """Return the policy that allows just the inline scripts of these pages."""
    hashes = sorted({_hash(text) for page in pages for text in inline_scripts(page)})
    rules = {**RULES, "script-src": " ".join([RULES["script-src"], *hashes])}
    return "; ".join(f"{name} {value}" for name, value in rules.items())


def inline_scripts(page: str) -> list[str]:
    """Return the text of every inline script of a page that a browser would run."""
    return [
        found["text"]
        for found in INLINE.finditer(page)
        if "src=" not in found["attributes"] and not DATA.search(found["attributes"])
    ]


def with_policy(page: str, policy: str) -> str:
    """Return a page with its policy ahead of everything that is fetched."""
    if START not in page:
        raise ValueError("a page lacks the line that the policy goes behind")
    meta = f'<meta http-equiv="Content-Security-Policy" content="{policy}">'
    return page.replace(START, START + meta, 1)


def _hash(text: str) -> str:
    digest = hashlib.sha256(text.encode()).digest()
    return f"'sha256-{base64.b64encode(digest).decode()}'"
