"""Browsers of two other engines, each started once, on the built site under a sub-path.

Every test that takes `engine` runs in Firefox and in WebKit, unless it has the mark `only`. An
engine that is not on the machine is skipped, but where EVERY_ENGINE is set its tests fail.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from build_tools.site.build import ensure_site
from tests.browser.host import Host
from tests.engines import firefox, webkit
from tests.engines.engine import Engine
from tests.engines.firefox import Firefox
from tests.engines.webkit import WebKit

MARKS = (
    "first_visit: a host of its own, of which the browser has seen nothing",
    "only(name): in the engine of this name alone",
    "slow_in(name): in the engine of this name with the slow tests only, as another has shown it",
    "allows(*words): errors with these words pass, in a test that breaks things on purpose",
    "firefox_preferences(preferences): in Firefox alone, with other preferences",
)
ALL_ARE_HERE = "EVERY_ENGINE"
NAMES = ("firefox", "webkit")
Starter = Callable[[str], Engine]


def pytest_configure(config: pytest.Config) -> None:
    """Tell pytest of the marks."""
    for mark in MARKS:
        config.addinivalue_line("markers", mark)


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Make a test for each engine in which it holds."""
    if "engine" not in metafunc.fixturenames:
        return
    only = metafunc.definition.get_closest_marker("only")
    names = only.args if only else NAMES
    if metafunc.definition.get_closest_marker("firefox_preferences"):
        names = ("firefox",)
    later = metafunc.definition.get_closest_marker("slow_in")
    slow = later.args if later else ()
    engines = [
        pytest.param(name, marks=[pytest.mark.slow] if name in slow else []) for name in names
    ]
    metafunc.parametrize("engine", engines, indirect=True)


@pytest.fixture(scope="session")
def site() -> Path:
    """The built site's folder."""
    return ensure_site()


@pytest.fixture(scope="session")
def lasting_host(site: Path) -> Iterator[Host]:
    """The host that stays as it is."""
    made = Host(site)
    yield made
    made.stop()


@pytest.fixture
def host(request: pytest.FixtureRequest, site: Path) -> Iterator[Host]:
    """A host that serves the site."""
    if not request.node.get_closest_marker("first_visit"):
        yield request.getfixturevalue("lasting_host")
        return
    made = Host(site)
    yield made
    made.stop()


@pytest.fixture(scope="session")
def started() -> Iterator[Starter]:
    """Give a browser by its engine's name, started when it is first asked for."""
    browsers: dict[str, Engine] = {}

    def start(name: str) -> Engine:
        if name not in browsers:
            browsers[name] = Firefox() if name == "firefox" else WebKit()
        return browsers[name]

    yield start
    for browser in browsers.values():
        browser.ends()


@pytest.fixture
def engine(request: pytest.FixtureRequest, started: Starter, host: Host) -> Iterator[Engine]:
    """A browser that remembers nothing of its visits."""
    lacks = (firefox if request.param == "firefox" else webkit).missing()
    if lacks and ALL_ARE_HERE in os.environ:
        pytest.fail(lacks)
    if lacks:
        pytest.skip(lacks)
    browser = started(request.param)
    browser.host = host
    wanted = request.node.get_closest_marker("firefox_preferences")
    before = browser.prefers(wanted.args[0]) if wanted and isinstance(browser, Firefox) else None
    browser.complaints()
    yield browser
    broken = browser.complaints()
    if before is not None and isinstance(browser, Firefox):
        browser.prefers(before)
    if not request.node.get_closest_marker("first_visit"):  # there the next test has another host
        browser.forgets()
    allowed = [word for mark in request.node.iter_markers("allows") for word in mark.args]
    assert [one for one in broken if not any(word in one for word in allowed)] == []
