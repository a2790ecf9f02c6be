"""What a start of the checkers was, and what a browser keeps of it for the next."""

from __future__ import annotations

from urllib.parse import quote

from playwright.sync_api import ConsoleMessage, Page

from tests.browser.host import PATH
from tests.browser.phone import PATIENCE, Phone

PLACE = "checkers/readings/"
CASE = (
    f"{PLACE}#code=gb&on=2026-11-24&device.type=A&device.rated_residual_current=30+mA"
    "&readings.0.test=trip-time&readings.0.multiple=1&readings.0.waveform=ac&readings.0.value=28"
)
NOTE = "without their image"
ROOT = quote(f"/{PATH}/", safe="")
LENGTH = f"/{PATH}/ start image"  # where the page remembers it
IMAGE_IS_KEPT = f"localStorage.getItem('{LENGTH}') > 0"
REHEARSED = f"localStorage.getItem('/{PATH}/ start rehearsed') !== null"
THEME_IS_THERE = "globalThis.location$ !== undefined"

# The messages of the page's own worker, told with what each start was; and where it replies.
LISTEN = """
globalThis.heard = [];
const Before = globalThis.Worker;
globalThis.Worker = class extends Before {
  constructor(...rest) {
    super(...rest);
    if (String(rest[0]).endsWith("/worker.js") && JSON.parse(rest[1].name).slug) {
      globalThis.theWorker = this;
      this.addEventListener("message", ({ data }) => {
        globalThis.heard.push({ said: Object.keys(data)[0], taken: data.taken === true });
        if (data.ready && globalThis.BroadcastChannel) {
          globalThis.theReplies = new BroadcastChannel(data.channel);
        }
      });
    }
  }
};
"""


def notes_of(page: Page) -> list[str]:
    """Listen from now on; gives what the console is told of starts without an image."""
    told: list[str] = []

    def hear(message: ConsoleMessage) -> None:
        if NOTE in message.text:
            told.append(message.text)

    page.on("console", hear)
    page.add_init_script(LISTEN)
    return told


def visit(phone: Phone) -> None:
    """Open the page of a passing case anew, and wait for its verdict."""
    phone.open("safety/")
    phone.open(CASE)
    phone.waits_for("pass")


def wait_until(page: Page, asked: str) -> None:
    """Wait until a piece of JavaScript says yes: asked from outside, as the page runs no text."""
    for _ in range(PATIENCE // 100):
        if page.evaluate(asked):
            return
        page.wait_for_timeout(100)
    raise AssertionError(f"never so: {asked}")


def wait_for_image(page: Page) -> None:
    """Wait until an image for the next start is kept."""
    wait_until(page, IMAGE_IS_KEPT)


def was_from_image(page: Page) -> bool:
    """Tell whether the page's worker was started once, and from an image."""
    said = [one for one in page.evaluate("globalThis.heard") if one.get("said") == "ready"]
    return [one["taken"] for one in said] == [False]
