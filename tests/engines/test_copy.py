"""The copy on the device serves without a network, across restarts, and changes as a whole."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.browser.copy.second_build import MARK, make_second_build
from tests.browser.host import Host
from tests.engines.engine import Engine
from tests.engines.test_core import CASE

pytestmark = [
    pytest.mark.first_visit,
    # Without a host, what is looked for anew fails: that is what these tests are about.
    pytest.mark.allows("A ServiceWorker intercepted the request"),
]
NOTICE = "newer build of this site, of 24 December 2031"


@pytest.fixture(scope="session")
def second(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a second build."""
    return make_second_build(site, tmp_path_factory.mktemp("second") / "site")


@pytest.mark.slow_in("webkit")
def test_the_copy_needs_no_network_and_changes_as_a_whole(
    engine: Engine, host: Host, second: Path
) -> None:
    """Without the host a reload judges and a page opens; a new build waits until it is taken."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.waits_for_text("Works offline. Copy built on", "[data-offline]")
    host.stop()
    engine.reloads()
    engine.waits_for_outcome("pass")
    engine.open("limits/iec-61008-1/")
    engine.waits_for_text("IEC 61008-1", "h1")

    host.folder = second
    host.start()
    engine.reloads()
    engine.waits_for_text(NOTICE, ".notice")
    assert MARK.strip() not in engine.text("body")
    host.stop()
    engine.run("document.querySelector('.notice button').click()")
    engine.waits_for_text(MARK)
    engine.waits_for_text("24 December 2031", "[data-offline]")
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    assert MARK.strip() in engine.text("body")
    assert [name for name in engine.run("return caches.keys()") if "second" not in name] == []


@pytest.mark.slow
@pytest.mark.only("firefox")
def test_a_browser_started_again_needs_no_network(engine: Engine, host: Host) -> None:
    """It judges from the copy, and what was kept is there."""
    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.keeps(device="Way 8")
    engine.waits_for_text("Works offline. Copy built on", "[data-offline]")
    host.stop()

    engine.restarts()

    engine.open(CASE)
    engine.waits_for_outcome("pass")
    engine.open("log/")
    engine.waits_for_text("Way 8", "[data-list]")
