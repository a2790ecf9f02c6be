"""What each local code asks, as pages: one a code, with what is not known of it."""

from __future__ import annotations

from typing import Any

from build_tools.pages.rendering import html, markdown
from checkers.command_line.code_overview import code_as_values
from checkers.domain.codes.registry import CODES, CodeTest
from checkers.domain.device.readings import Test
from checkers.domain.limits.words import WAVEFORMS
from checkers.domain.quantities.quantity import format_number
from checkers.domain.sources.documents import Evidence

TESTS = {one.value: one.label for one in Test}
PARTS = {
    "editions": "Editions, and from which day",
    "tests": "Tests it speaks of",
    "types": "What it says of device types",
    "intervals": "How often tests are repeated",
}


def code_pages() -> dict[str, str]:
    """Return the pages: a list of the codes, then one page a code."""
    pages = {
        f"codes/{key}.md": markdown("pages/code.md", code=code, parts=_parts(key))
        for key, code in CODES.items()
    }
    return {"codes/index.md": markdown("pages/codes.md", codes=CODES), **pages}


def _parts(key: str) -> dict[str, str]:
    values = code_as_values(CODES[key])
    return {name: title for name, title in PARTS.items() if values[name]}


def code_macro(words: str, root: str) -> str:
    """Show one part of a code, or its tables: the code's key, then the part's name."""
    key, part = words.split()
    values = code_as_values(CODES[key])
    if part == "tables":
        return html("macros/code-tables.html", tables=values["tables"], root=root)
    rules = [_rule(one) for one in values[part]]
    if part == "tests":
        said = [test_in_words(test) for test in CODES[key].tests]
        rules = [{**rule, "says": says} for rule, says in zip(rules, said, strict=True)]
    return html("macros/code.html", rules=rules)


def test_in_words(test: CodeTest) -> str:
    """Return what a code says of a test, as "Trip time at ×1, AC (sine): required"."""
    multiple = "" if test.multiple is None else f" at ×{format_number(test.multiple)}"
    waveform = f", {WAVEFORMS[test.waveform]}" if test.waveform else ""
    purpose = f", for {test.purpose.replace('-', ' ')}" if test.purpose else ""
    standing = test.standing.replace("-", " ")
    return f"{TESTS[test.test]}{multiple}{waveform}: {standing}{purpose}"


def _rule(rule: dict[str, Any]) -> dict[str, str]:
    source, says = rule["source"], rule.get("says") or rule["name"]
    place = ", ".join(source[name] for name in ("document", "edition", "clause") if source[name])
    start = f"from {rule['from']}" if rule["from"] else ""
    end = f"until {rule['until']}" if rule["until"] else ""
    return {
        "says": f"{says[0].upper()}{says[1:]}",
        "days": f"{start} {end}".strip(),
        "source": f"{place}: {Evidence(source['evidence']).meaning}",
        "note": rule["note"],
    }
