"""The policy that a host sends binds a worker in every engine, from our server and from nginx."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.browser.copy.nginx import LACKING, Nginx
from tests.browser.guard import Elsewhere
from tests.browser.host import SOURCES, Host, source_folder
from tests.browser.tells import ASK_WORKER, BLOCKED, TELLS
from tests.engines.engine import Engine

pytestmark = pytest.mark.allows("olicy", "from-worker")

PAGE = "safety/"


@pytest.fixture(scope="module")
def nginx(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Nginx]:
    """One that serves the site as told, with a script of ours."""
    if LACKING:
        pytest.skip(LACKING)
    made = Nginx(site, tmp_path_factory.mktemp("nginx"), {"tells.js": TELLS})
    yield made
    made.stop()


def test_our_server_binds_a_worker(engine: Engine, host: Host) -> None:
    """`serve` sends what a worker is held to."""
    (source_folder() / "tells.js").write_text(TELLS)

    assert _tells(engine, host.address, f"browser/{SOURCES}/tells.js") == (BLOCKED, [])


def test_nginx_as_told_binds_a_worker(engine: Engine, nginx: Nginx) -> None:
    """So do its settings on the page on hosting."""
    assert _tells(engine, nginx.address, "tells.js") == (BLOCKED, [])


def _tells(engine: Engine, address: str, script: str) -> tuple[object, list[str]]:
    elsewhere = Elsewhere()  # another origin, as another host is
    engine.driver.get(address + PAGE)
    said = engine.run(
        f"return ({ASK_WORKER})(arguments[0])",
        [f"{address}{script}", f"{elsewhere.address}/from-worker"],
    )
    return said, elsewhere.asked
