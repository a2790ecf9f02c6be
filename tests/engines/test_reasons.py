"""Every engine fails in words of its own, and the page gives the same true reason in each."""

from __future__ import annotations

import pytest

from build_tools.files import media_types
from build_tools.site.browser_needs import in_words
from tests.engines.engine import Engine
from tests.engines.test_core import CASE

# What the console says of faults made on purpose.
pytestmark = pytest.mark.allows("checkers", "MIME", "load", "WebAssembly", "404", "worker")

OCTETS = "application/octet-stream"


def _says(engine: Engine, *words: str) -> None:
    engine.open(CASE)
    engine.waits_for_text("Not running", "[data-verdict]")
    for one in words:
        engine.waits_for_text(one, "[data-verdict]")


@pytest.mark.slow_in("webkit")
@pytest.mark.first_visit
def test_machine_code_of_another_type(engine: Engine, monkeypatch: pytest.MonkeyPatch) -> None:
    """The file and the type that the host sends; the mended host gives the verdict."""
    monkeypatch.setitem(media_types.TYPES, ".wasm", OCTETS)
    _says(engine, "pyodide.asm.wasm", OCTETS)

    monkeypatch.setitem(media_types.TYPES, ".wasm", "application/wasm")
    engine.click("[data-retry]")

    engine.waits_for_outcome("pass")


@pytest.mark.first_visit
def test_a_file_that_is_not_there(engine: Engine) -> None:
    """With the status that the host gives."""
    engine.host.missing = "/runtime/pyodide.asm.wasm"

    _says(engine, "pyodide.asm.wasm", "status 404")


@pytest.mark.first_visit
@pytest.mark.firefox_preferences({"javascript.options.wasm": False})
def test_webassembly_switched_off(engine: Engine) -> None:
    """By its name, with what else there is; another try would not help."""
    _says(engine, "WebAssembly is switched off", in_words("checkers"))

    assert engine.run("return document.querySelector('[data-retry]').hidden")
