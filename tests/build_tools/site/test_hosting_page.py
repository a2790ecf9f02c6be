"""The page on hosting tells each server the headers that our own server sends."""

from __future__ import annotations

import re

import pytest

from build_tools.files import paths
from build_tools.site.policy import sent_headers

PAGE = (paths.ROOT / "docs" / "hosting.md").read_text(encoding="utf-8")
FOUND = re.findall(r"```(\w+)\n(.*?)```", PAGE, re.DOTALL)
BLOCKS = {kind: "".join(text for of, text in FOUND if of == kind) for kind, _ in FOUND}
SENT = sent_headers()


@pytest.mark.parametrize("server", ["nginx", "apache", "xml"])
@pytest.mark.parametrize("header", SENT)
def test_each_server_sends_the_header(server: str, header: str) -> None:
    """Name and value stand in one line of its settings."""
    lines = [line for line in BLOCKS[server].splitlines() if header in line]

    assert len(lines) == 1
    assert SENT[header] in lines[0]


def test_the_policy_is_told_to_who_writes_other_settings() -> None:
    """An object store, or a server that is not named, gets the same text."""
    assert BLOCKS["text"].strip() == SENT["Content-Security-Policy"]
