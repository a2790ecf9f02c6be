"""A mark in a page is replaced by what it asks for, or stops the build."""

from __future__ import annotations

import pytest

from build_tools.pages.marks import UnknownMacroError, fill_in

MACROS = {"echo": lambda words, root: f"[{root}|{words}]"}


def test_a_mark_is_replaced_and_the_rest_left_alone() -> None:
    """The words after the kind, over several lines too, reach what is shown."""
    page = "<p>a</p>\n<!-- show echo one\n two -->\n<!-- a note -->"

    assert fill_in(page, MACROS, "../") == "<p>a</p>\n[../|one\n two]\n<!-- a note -->"


def test_a_json_case_with_a_greater_sign_is_whole() -> None:
    """A reading such as >300 inside a mark does not end it."""
    page = '<!-- show echo x {"value": ">300"} -->'

    assert fill_in(page, MACROS, "") == '[|x {"value": ">300"}]'


def test_an_unknown_kind_is_refused_by_name() -> None:
    """A slip of the pen stops the build and names what there is."""
    with pytest.raises(UnknownMacroError, match="there is echo, but no 'ecko'"):
        fill_in("<!-- show ecko -->", MACROS, "")
