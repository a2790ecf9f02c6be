"""The two template environments: one for HTML, one for the Markdown of generated pages."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from build_tools.site.browser_needs import in_words

TEMPLATES = Path(__file__).with_name("templates")


@cache
def _environment(*, escape: bool) -> Environment:
    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        undefined=StrictUndefined,
        autoescape=escape,  # noqa: S701  # false for Markdown alone, which is not HTML
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["enough"] = in_words("checkers")  # told wherever a checker may not start
    return made


def html(template: str, **values: Any) -> Markup:
    """Fill an HTML template; every value that is not Markup is escaped.

    Raises jinja2.UndefinedError where the template names a value it was not given.
    """
    return Markup(_environment(escape=True).get_template(template).render(**values))  # noqa: S704  # the template escaped it


def markdown(template: str, **values: Any) -> str:
    """Fill a Markdown template; nothing is escaped, since Markdown is not HTML."""
    return _environment(escape=False).get_template(template).render(**values)
