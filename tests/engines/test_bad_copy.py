"""A bad offline copy heals, and changed files are refused, whatever the engine."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.files.media_types import TYPES
from tests.browser.copy.changed_site import change_file
from tests.browser.copy.copy_on_phone import DAMAGE, WRONG
from tests.browser.host import Host
from tests.browser.sampling import sampled
from tests.browser.starts import LENGTH
from tests.engines.engine import Engine
from tests.engines.test_core import CASE

pytestmark = [
    pytest.mark.first_visit,
    pytest.mark.allows("integrity attribute", "A ServiceWorker intercepted the request"),
]

LONG = 120  # seconds: a start that fails is followed by another, and WebKit compiles for long
PASSED = "document.querySelector('[data-verdict][data-outcome=pass]')"
KEPT = "document.querySelector('[data-offline]').textContent.includes('Works offline')"
FORGET = f"localStorage.removeItem('{LENGTH}')"
# More ways are gone through in Chromium: each engine's own way of healing is in the first.
DAMAGED = [
    (".whl", "one byte of it"),
    pytest.param("pyodide.asm.wasm", "its type", marks=pytest.mark.slow),
    pytest.param("/page.js", "half of it", marks=pytest.mark.slow),
]
REFUSED = {
    "browser/*/page.js": "page.js was changed on its way",
    "browser/*/worker.js": "The checkers could not start",
    "runtime/pyodide.js": "The checkers could not start",
    "runtime/pyodide.asm.js": "The checkers could not start",
}


@pytest.mark.slow_in("webkit")
@pytest.mark.parametrize(("ending", "way"), DAMAGED)
def test_a_damaged_entry_is_fetched_anew(engine: Engine, ending: str, way: str) -> None:
    """The next start gives its verdict without being told to, and the copy is right again."""
    engine.open(CASE)
    engine.waits_for(PASSED, LONG)
    engine.waits_for(KEPT, LONG)
    assert engine.run(f"return ({DAMAGE})(arguments)", ending, way) == 1
    engine.run(FORGET)

    engine.open(CASE)

    engine.waits_for(PASSED, LONG)
    assert engine.run(f"return ({WRONG})(arguments[0])", TYPES) == []


@pytest.mark.slow
def test_a_page_past_the_copy_has_it_mended(engine: Engine) -> None:
    """A driver's reload in Firefox loads the page past the copy, but not its worker's files."""
    engine.open(CASE)
    engine.waits_for(PASSED, LONG)
    engine.waits_for(KEPT, LONG)
    engine.run(f"return ({DAMAGE})(arguments)", ".whl", "one byte of it")
    engine.run(FORGET)

    engine.reloads()

    engine.waits_for(PASSED, LONG)


@pytest.mark.slow_in("webkit")
def test_a_wrong_type_from_the_host_is_not_kept(engine: Engine, host: Host) -> None:
    """Machine code of another type fails the first start; the copy's own types let it run."""
    host.types = {".wasm": "application/octet-stream"}
    engine.open(CASE)

    engine.waits_for(PASSED, LONG)
    engine.run(FORGET)
    host.stop()
    engine.open(CASE)
    engine.waits_for(PASSED, LONG)
    host.start()


@pytest.mark.parametrize("pattern", sampled(REFUSED, always=1))
def test_no_verdict_comes_from_a_changed_script(
    engine: Engine, host: Host, site: Path, tmp_path: Path, pattern: str
) -> None:
    """On a first visit, with no copy yet; the reason is said."""
    (file,) = site.glob(pattern)
    host.folder = change_file(site, tmp_path / "changed", file.relative_to(site).as_posix())
    engine.open(CASE)

    told = "document.querySelector('[data-verdict]').innerText"
    engine.waits_for(f"{told}.includes({REFUSED[pattern]!r})", LONG)
    assert not engine.run(f"return {PASSED}")


def test_a_changed_script_that_comes_later_is_told(
    engine: Engine, host: Host, site: Path, tmp_path: Path
) -> None:
    """By the import map."""
    (file,) = site.glob("browser/*/schedule-page-*.js")
    host.folder = change_file(site, tmp_path / "changed", file.relative_to(site).as_posix())
    engine.open("checkers/schedule/")

    engine.waits_for_text("did not arrive as it was built", "[data-schedule]")
