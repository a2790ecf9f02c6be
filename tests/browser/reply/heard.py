"""What a screen reader is told of the controls that a walk has numbered."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from playwright.sync_api import Page


def told(page: Page) -> dict[int, dict[str, Any]]:
    """Return what a screen reader is told of each numbered control: its role, name and more."""
    session = page.context.new_cdp_session(page)
    numbers = dict(_numbers(session.send("DOM.getDocument", {"depth": -1})["root"]))
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    session.detach()
    return {
        numbers[node["backendDOMNodeId"]]: _told_of(node)
        for node in nodes
        if node.get("backendDOMNodeId") in numbers and not node.get("ignored")
    }


def _numbers(node: dict[str, Any]) -> Iterator[tuple[int, int]]:
    attributes = node.get("attributes", [])
    named = dict(zip(attributes[::2], attributes[1::2], strict=True))
    if "data-walk" in named:
        yield node["backendNodeId"], int(named["data-walk"])
    for child in node.get("children", []):
        yield from _numbers(child)


def _told_of(node: dict[str, Any]) -> dict[str, Any]:
    properties = {one["name"]: one["value"].get("value") for one in node.get("properties", [])}
    texts = {
        key: str(node.get(key, {}).get("value", "")) for key in ("name", "role", "description")
    }
    return {**texts, "properties": properties}


def plain(text: str) -> str:
    """Return a text as it is compared: small letters, no spaces."""
    return "".join(text.split()).casefold()
