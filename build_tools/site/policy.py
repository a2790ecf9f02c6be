"""The content-security policy: the site's own files, and the theme's inline scripts by hash.

A page carries it, so that it holds on any host. That binds no worker, which Python runs in: a
worker stands under the policy that its own file is sent with. So a host sends one as well.
"""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable, Mapping
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

# The same for every file and every build, so that a host's settings need no change. A page stands
# under both: its own policy, with its hashes, still decides which inline script runs.
HEADER = {**RULES, "script-src": f"{RULES['script-src']} 'unsafe-inline'"}


def sent_headers() -> dict[str, str]:
    """Return what a host sends with every file, by the header's name."""
    return {
        "Content-Security-Policy": _joined(HEADER),
        "X-Content-Type-Options": "nosniff",
        "Referrer-Policy": "no-referrer",
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
    return _joined(rules)


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


def _joined(rules: Mapping[str, str]) -> str:
    return "; ".join(f"{name} {value}" for name, value in rules.items())


def _hash(text: str) -> str:
    digest = hashlib.sha256(text.encode()).digest()
    return f"'sha256-{base64.b64encode(digest).decode()}'"
