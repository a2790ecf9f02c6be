"""What a page fetches is bound to its build: folder, scripts and runtime by their hashes."""

from __future__ import annotations

import json
import re

import checkers
from build_tools.files import fingerprints
from build_tools.runtime.assembly import ensure_runtime
from build_tools.site import browser_files
from build_tools.site.script_floors import SOURCES
from checkers.catalogue import CHECKERS
from checkers.domain.sources.documents import Evidence
from checkers.domain.verdicts import Judges, Outcome


def test_the_folder_is_named_for_what_it_holds() -> None:
    """The scripts and styles lie in a folder whose name changes with any of them."""
    ensure_runtime()

    assert re.fullmatch(r"browser/[0-9a-f]{12}", browser_files.browser_folder())


def test_every_word_of_a_reply_has_its_words() -> None:
    """Outcomes, what is judged and evidence words of Python are all known to the page."""
    words = browser_files.words()

    assert set(words["OUTCOMES"]) == {one.value for one in Outcome}
    assert set(words["JUDGES"]) == {one.value for one in Judges}
    assert words["EVIDENCE"] == {one.value: one.meaning for one in Evidence}


def test_a_constant_is_a_script_that_says_the_value() -> None:
    """What is handed to the page as a script is JSON behind a name; records have no prototype."""
    text = browser_files.constants({"WORDS": {"a": [{"b": "ü"}]}}).decode()
    read = json.loads(text.removeprefix("export const WORDS = ").rstrip(";\n"))

    assert read == {"__proto__": None, "a": [{"__proto__": None, "b": "ü"}]}


def test_no_script_or_style_names_another_host() -> None:
    """Nothing written for the browser holds an address elsewhere, names of vocabularies apart."""
    allowed = ("http://www.w3.org/",)
    found = [
        (path.name, address)
        for path in fingerprints.files_under(SOURCES)
        for address in re.findall(r"https?://[^\s\"'`]+", path.read_text(encoding="utf-8"))
        if not address.startswith(allowed)
    ]

    assert found == []


def test_a_page_tells_its_first_checker() -> None:
    """The one that is imported ahead of its first question."""
    page = '<div data-checker="dc-bias"></div><div data-checker="readings"></div>'

    assert browser_files.first_checker(page) == "dc-bias"
    assert browser_files.first_checker("<p>text</p>") == ""


def test_what_a_result_is_called_is_the_name_of_a_result() -> None:
    """Each name stands for a key that an example's answer has, at the top or in a list."""
    answers = [
        checkers.run(checker.slug, example.request).get("answer") or {}
        for checker in CHECKERS
        for example in checker.examples
    ]
    lists = [one for answer in answers for one in answer.values() if isinstance(one, list)]
    columns = {key for rows in lists for row in rows if isinstance(row, dict) for key in row}

    assert set(browser_files.words()["RESULTS"]) <= columns.union(*answers)
