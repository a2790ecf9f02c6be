"""Live checkers on a page, their examples, and the ways to them from the front page."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any
from urllib.parse import urlencode

from build_tools.files import paths
from build_tools.pages.far_days import far_days
from build_tools.pages.forms import form_fields
from build_tools.pages.rendering import html
from checkers import run
from checkers.catalogue import SLUGS, checker_for
from checkers.command_line.printing import headline
from checkers.domain.inputs.parsing import parse_inputs
from checkers.domain.inputs.request_text import read_request

DOORS = paths.ROOT / "docs" / "front-page.toml"


def checker_macro(words: str, root: str) -> str:
    """Show a live checker: its slug, and, if it is to start from a case, the case as JSON.

    Raises KeyError for a checker there is not, InvalidRequest for a case it refuses.
    """
    slug, _, case = words.partition(" ")
    checker = checker_for(slug)
    if case:
        parse_inputs(checker.inputs, read_request(case))
    return html(
        "macros/checker.html",
        checker=checker,
        fields=form_fields(checker.inputs, slug),
        given=case.strip(),
        own_address=not case,
        far=far_days(),
        root=root,
    )


def examples_macro(slug: str, root: str) -> str:
    """Show a checker's examples as links that open it with the case filled in."""
    examples = [
        {
            "title": example.title,
            "outcome": example.outcome,
            "word": headline(run(slug, example.request)).capitalize(),
            "address": f"{root}checkers/{slug}/#{fragment(example.request)}",
        }
        for example in checker_for(slug).examples
    ]
    return html("macros/examples.html", examples=examples)


def fragment(request: Mapping[str, Any]) -> str:
    """Return a request as the part of an address after the #, as the page reads and writes it."""
    return urlencode(list(_leaves(request, "")))


def _leaves(value: Any, path: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, Mapping):
        for name, inner in value.items():
            yield from _leaves(inner, f"{path}.{name}" if path else str(name))
    elif isinstance(value, list | tuple):
        for place, inner in enumerate(value):
            yield from _leaves(inner, f"{path}.{place}")
    elif isinstance(value, bool):
        yield path, "yes" if value else "no"
    else:
        yield path, str(value)


@cache
def doors() -> dict[str, tuple[dict[str, str], ...]]:
    """Return the front page's ways in by group: what the reader has in hand, where that leads.

    A way to a checker that is not there is left out.
    """
    table = tomllib.loads(DOORS.read_text(encoding="utf-8"))
    slugs = set(SLUGS)
    return {
        group["title"]: tuple(
            {"leads": door.get("leads", f"checkers/{door.get('checker')}/"), **door}
            for door in group["door"]
            if door.get("checker") is None or door["checker"] in slugs
        )
        for group in table["group"]
    }


def doors_macro(_: str, root: str) -> str:
    """Show the front page's ways in."""
    return html("macros/doors.html", groups=doors(), root=root)
