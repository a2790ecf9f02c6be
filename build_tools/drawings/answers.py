"""What a picture takes out of a checker's reply, so that it shows what the verdict rests on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from checkers.domain.sources.documents import Evidence


def answer_of(reply: Mapping[str, Any]) -> dict[str, Any]:
    """Return the named results of a reply; raises ValueError where it is no result."""
    if reply["kind"] != "result":
        raise ValueError(f"a picture asks {reply['checker']} for what it refuses: {reply}")
    return dict(reply["answer"])


def amount(figure: Any) -> float:
    """Return the value of a figure of an answer, in the unit it has there."""
    return float(figure["value"])


def sources_of(reply: Mapping[str, Any]) -> tuple[str, ...]:
    """Return the citations of every finding of a reply, each once, as lines a person reads."""
    cited = [source for finding in reply["findings"] for source in finding["sources"]]
    return tuple(dict.fromkeys(_words(source) for source in cited))


def _words(source: Mapping[str, str]) -> str:
    place = ", ".join(source[key] for key in ("document", "edition", "clause") if source[key])
    return f"{place} ({Evidence(source['evidence']).meaning})"
