"""Where Python cannot start the page says why, whole, keeps what was typed, and can try again."""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from typing import NamedTuple

import pytest
from playwright.sync_api import Page, Route, expect

from build_tools.site.browser_needs import in_words
from build_tools.site.script_floors import SOURCES
from tests.browser.guard import Guard
from tests.browser.host import source_of
from tests.browser.phone import PATIENCE, Phone, change_worker
from tests.browser.sampling import sampled

pytestmark = pytest.mark.first_visit

CHECKER = "checkers/readings/"
CASE = (
    "#code=gb&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac"
)
MACHINE_CODE = "**/*.wasm"
WHEEL = "**/*.whl"
LOADER = re.compile(r"/runtime/pyodide\.m?js")
ENOUGH = in_words("checkers")
WHOLE = """
() => {
  const detail = document.querySelector("[data-detail]");
  const link = detail.querySelector("a").getBoundingClientRect();
  const seen = link.bottom <= innerHeight && link.right <= innerWidth;
  return seen && detail.scrollHeight <= detail.clientHeight;
}
"""
CLASSIC = """
const Before = Worker;
globalThis.Worker = class extends Before { constructor(url, { name }) { super(url, { name }); } };
"""
# A browser that knows no modules never asks for one, so it tells of no failure either.
NEVER_ASKS = 'addEventListener("error", (event) => event.stopImmediatePropagation(), true);'
NO_WORKER = """
globalThis.Worker = class {
  constructor() { throw new DOMException("The operation is insecure.", "SecurityError"); }
};
"""
# The words of Chromium where it gives no more memory.
NO_MEMORY = """
WebAssembly.Memory = class {
  constructor() { throw new RangeError("WebAssembly.Memory(): could not allocate memory"); }
};
"""
NO_NETWORK = 'Object.defineProperty(WorkerNavigator.prototype, "onLine", { get: () => false });'
PYTHON_FAILS = """
WebAssembly.compileStreaming = async () => { throw new Error("PythonError: KeyError"); };
"""
HELD_TO = {"content-security-policy": "connect-src 'none'"}
WITHOUT_MACHINE_CODE = {"content-security-policy": "script-src 'self'"}


def _change(place: str | re.Pattern[str], how: Callable[[Route], None]) -> Callable[[Page], object]:
    return lambda page: page.route(place, how)


def _sent(**changes: object) -> Callable[[Route], None]:
    return lambda route: route.fulfill(response=route.fetch(), **changes)  # type: ignore[arg-type]


def _halved(route: Route) -> None:
    answer = route.fetch()
    route.fulfill(response=answer, body=answer.body()[: len(answer.body()) // 2])


def _under(policy: dict[str, str]) -> Callable[[Route], None]:
    def sent(route: Route) -> None:
        answer = route.fetch()
        route.fulfill(response=answer, headers={**answer.headers, **policy})

    return sent


def _no_network(page: Page) -> None:
    change_worker(page, NO_NETWORK)
    page.route(MACHINE_CODE, lambda route: route.abort())


class Fault(NamedTuple):
    """What is wrong, and what the page must say of it."""

    kind: str
    cause: Callable[[Page], object]
    says: tuple[str, ...]
    helps: bool = True


FAULTS = {
    "machine code of another type": Fault(
        "wrong-type",
        _change(MACHINE_CODE, _sent(content_type="application/octet-stream")),
        ("pyodide.asm.wasm", "application/octet-stream"),
    ),
    "script of another type": Fault(
        "wrong-type",
        _change(LOADER, _sent(content_type="application/octet-stream")),
        ("pyodide.", "application/octet-stream"),
    ),
    "machine code cut short": Fault(
        "changed", _change(MACHINE_CODE, _halved), ("pyodide.asm.wasm did not arrive whole",)
    ),
    "script cut short": Fault(
        "changed", _change("**/pyodide.asm.js*", _halved), ("pyodide.asm.js did not arrive whole",)
    ),
    "worker cut short": Fault(
        "changed", _change("**/worker.js*", _halved), ("worker.js did not arrive whole",)
    ),
    "file refused": Fault("refused", _change(WHEEL, _sent(status=403)), (".whl", "status 403")),
    "file not there": Fault(
        "missing", _change(MACHINE_CODE, _sent(status=404)), ("asm.wasm", "status 404")
    ),
    "worker not there": Fault(
        "missing", _change("**/worker.js*", _sent(status=404)), ("worker.js", "status 404")
    ),
    "file blocked": Fault(
        "unreachable",
        _change(WHEEL, lambda route: route.abort()),
        (".whl could not be fetched", "extension"),
    ),
    "no network": Fault(
        "offline",
        _no_network,
        ("there is no network", "asm.wasm"),
    ),
    "no memory": Fault(
        "memory",
        lambda page: change_worker(page, NO_MEMORY),
        ("not enough memory", "Close other tabs"),
    ),
    "no module workers": Fault(
        "too-old",
        lambda page: page.add_init_script(CLASSIC),
        ("too old", "workers that are modules", ENOUGH),
        helps=False,
    ),
    "no exceptions in WebAssembly": Fault(
        "too-old",
        lambda page: change_worker(page, "delete WebAssembly.Tag;"),
        ("too old", "exceptions in WebAssembly", ENOUGH),
        helps=False,
    ),
    "no WebAssembly": Fault(
        "no-webassembly",
        lambda page: change_worker(page, "delete globalThis.WebAssembly;"),
        ("WebAssembly is switched off", ENOUGH),
        helps=False,
    ),
    "no worker": Fault(
        "no-worker",
        lambda page: page.add_init_script(NO_WORKER),
        ("cookies and site data", "frame"),
    ),
    "machine code forbidden": Fault(
        "policy", _change("**/worker.js*", _under(WITHOUT_MACHINE_CODE)), ("a policy",), helps=False
    ),
    "file forbidden": Fault(
        "policy",
        _change("**/worker.js*", _under(HELD_TO)),
        ("a policy", "forbids the file"),
        helps=False,
    ),
    "a fault of Python": Fault(
        "fault",
        lambda page: change_worker(page, PYTHON_FAILS),
        ("this build has a fault",),
        helps=False,
    ),
}
SEEN_ELSEWHERE = {
    "ended",  # tests/browser/start/test_silent_worker.py
    "unknown",  # what nobody has thought of
}


@pytest.fixture(autouse=True)
def broken_on_purpose(guard: Guard) -> None:
    """What the console says of the fault is no complaint."""
    guard.allow(
        "The checkers",
        "not defined",
        "Failed to load",
        "POLICY",
        "olicy",
        "SyntaxError",
        "module",
        "CORS",
        "integrity",
    )


@pytest.mark.parametrize("name", sampled(FAULTS, always=3))
def test_the_reason_shown_is_the_reason(phone: Phone, page: Page, name: str) -> None:
    """With the file and what is wrong, whole on a phone, and a way that leads on."""
    fault = FAULTS[name]
    fault.cause(page)
    phone.open(CHECKER + CASE)
    phone.verdict.get_by_text("Not running").wait_for(timeout=PATIENCE)

    for words in fault.says:
        expect(phone.verdict).to_contain_text(words)
    assert page.evaluate(WHOLE)
    expect(page.get_by_role("button", name="Try again")).to_be_visible(visible=fault.helps)
    phone.types("28", "readings", "0", "value")
    expect(phone.verdict).to_contain_text("What you typed is kept")
    phone.verdict.get_by_role("link", name="The limit tables").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Limit tables")


def test_every_reason_has_been_seen() -> None:
    """A sentence that no fault brings up would be one that nobody has read."""
    words = (SOURCES / "basics" / "failure-words.js").read_text(encoding="utf-8")
    kinds = set(re.findall(r'^  "([\w-]+)": \(', words, re.MULTILINE))

    assert kinds == {fault.kind for fault in FAULTS.values()} | SEEN_ELSEWHERE


# What engines say, from their own sources and from tries: Chromium, Firefox, WebKit.
SAID = {
    "WebAssembly.Memory(): could not allocate memory": "memory",
    "Array buffer allocation failed": "memory",
    "Out of memory": "memory",
    "out of memory": "memory",
    "allocation size overflow": "memory",
    "Aborted(OOM). Build with -sASSERTIONS for more info.": "memory",
    "memory access out of bounds": "unknown",
    "violates the following Content Security policy directive": "policy",
    "call to WebAssembly.compileStreaming() blocked by CSP": "policy",
    "because 'unsafe-eval' or 'wasm-unsafe-eval' is not an allowed source of script": "policy",
    "PythonError: Traceback (most recent call last): KeyError: 'out of memory'": "fault",
    "PythonError: Traceback (most recent call last): MemoryError": "memory",
}


def test_what_engines_say_is_understood(phone: Phone, page: Page) -> None:
    """Each in its own words; what is not known is shown as it was said."""
    phone.open("safety/")
    found = page.evaluate(
        f"""async (said) => {{
          const {{ failureOf }} = await import({source_of("shared/failure.js")!r});
          return said.map((one) => failureOf(new Error(one)).kind);
        }}""",
        list(SAID),
    )

    assert dict(zip(SAID, found, strict=True)) == SAID


def test_a_blocked_runtime_is_tried_again(phone: Phone, page: Page) -> None:
    """Once the cause is gone, another try gives the verdict on what was typed meanwhile."""
    page.route(MACHINE_CODE, lambda route: route.abort())
    phone.open(CHECKER + CASE)
    expect(phone.verdict).to_contain_text("could not start", timeout=PATIENCE)
    phone.types("28", "readings", "0", "value")

    page.unroute(MACHINE_CODE)
    page.get_by_role("button", name="Try again").click()

    phone.waits_for("pass")


def test_files_of_another_build_are_never_run(phone: Phone, page: Page) -> None:
    """Checkers whose hash is not the one the page was built with are refused, also at the last."""

    def changed(route: Route) -> None:
        answer = route.fetch()
        time.sleep(2)  # the runtime is up by then, and waits for this file alone
        route.fulfill(response=answer, body=answer.body() + b" ")

    page.route(WHEEL, changed)
    phone.open(CHECKER + CASE)

    expect(phone.verdict).to_contain_text(".whl did not arrive whole", timeout=PATIENCE)


@pytest.mark.parametrize("place", sampled(["checkers/schedule/", "checkers/practice/"], always=1))
def test_other_pages_that_wait_say_the_same(phone: Phone, page: Page, place: str) -> None:
    """The schedule and practice wait for the same worker."""
    page.route(WHEEL, _sent(status=403))
    phone.open(place)

    expect(phone.verdict).to_contain_text("status 403", timeout=PATIENCE)
    assert page.evaluate(WHOLE)


@pytest.mark.slow
@pytest.mark.slow
def test_a_schedule_that_could_not_be_judged_is_after_another_try(phone: Phone, page: Page) -> None:
    """Its rows need not be pasted again."""
    page.route(WHEEL, _sent(status=403))
    phone.open("checkers/schedule/")
    expect(phone.verdict).to_contain_text("status 403", timeout=PATIENCE)
    page.locator("[data-text]").fill("Device,Type,Rating,Time\nWay 1,AC,30 mA,28 ms\n")
    page.locator("[data-judge]").click()

    page.unroute(WHEEL)
    page.get_by_role("button", name="Try again").click()

    expect(page.locator("[data-said]").first).to_contain_text("rows read", timeout=PATIENCE)


def test_without_scripts_the_page_says_what_it_needs(phone: Phone, page: Page) -> None:
    """The text that stands before any script runs tells what to do if it stays, and all of it."""
    page.route("**/*.js", lambda route: route.abort())
    page.add_init_script(NEVER_ASKS)
    phone.open(CHECKER)

    expect(phone.verdict).to_contain_text("this browser cannot run the checkers")
    expect(phone.verdict).to_contain_text(ENOUGH)
    link = phone.verdict.locator("[data-detail] a")
    expect(link).to_have_attribute("href", "../../limits/")
    expect(link).to_be_visible(timeout=PATIENCE)
    page.wait_for_function(WHOLE.strip(), timeout=PATIENCE)
