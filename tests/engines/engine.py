"""What a reader does in any browser engine, in the words of the tests."""

from __future__ import annotations

import json
import time
from abc import ABC, abstractmethod
from typing import Any

from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.ui import Select

from tests.browser.host import Host

WIDTH, HEIGHT = 412, 915  # a phone [px]
PATIENCE = 60  # seconds: a machine under load starts Python slowly, and WebKit the slowest
SHOWN = 400  # letters of the page, where something does not come about
PASTE = """
const [box, text] = [document.querySelector(arguments[0]), arguments[1]];
box.value = text;
box.dispatchEvent(new Event("paste", { bubbles: true }));
box.dispatchEvent(new Event("input", { bubbles: true }));
"""
WALK = """
const link = Object.assign(document.createElement("a"), { href: arguments[0] });
document.querySelector(".md-content").dataset.before = "";
document.querySelector(".md-content").append(link);
link.click();
"""
CLEAR_ALL = "localStorage.clear(); sessionStorage.clear()"
DROP_DATABASES = """
return indexedDB.databases().then((all) => Promise.all(all.map(({ name }) =>
  new Promise((done) => {
    const asked = indexedDB.deleteDatabase(name);
    asked.onsuccess = asked.onerror = asked.onblocked = done;
  }))))
"""
FIELD = """
let found = document.querySelector("[data-inputs]");
for (const name of arguments) {
  found = /^[0-9]+$/.test(name)
    ? found.querySelectorAll("[data-entry]")[name]
    : found.querySelector(`[data-field="${name}"], [data-group="${name}"], [data-many="${name}"]`);
}
return found
"""


class Engine(ABC):
    """A browser of one engine, with one page open on a host."""

    name: str
    driver: WebDriver
    host: Host

    @abstractmethod
    def start(self) -> None:
        """Start the browser with what it kept, if it can keep anything, on an empty page."""

    @abstractmethod
    def stop(self) -> None:
        """End the browser."""

    @abstractmethod
    def ends(self) -> None:
        """End the browser and all that it needs, for good."""

    def complaints(self) -> list[str]:
        """Return what pages of the host have broken since last asked, where an engine tells it."""
        return []

    def restarts(self) -> None:
        """End the browser and start it again."""
        self.stop()
        self.start()

    def open(self, place: str = "") -> None:
        """Open a page of the site by its place, as checkers/readings/, in a new document."""
        if "#" in place:
            self.driver.get("about:blank")  # an address that differs after its # is not opened anew
        self.driver.get(self.host.address + place)

    def walks(self, place: str) -> None:
        """Follow a link of the page to another place: the checkers go on running."""
        self.run(WALK, self.host.address + place)
        self.waits_for("!document.querySelector('[data-before]')")

    def reloads(self) -> None:
        """Open the same page again as a reader does: a driver's own reload passes the copy by."""
        self.run("document.documentElement.dataset.before = ''; location.reload()")
        self.waits_for("!('before' in document.documentElement.dataset)")

    def run(self, script: str, *arguments: Any) -> Any:
        """Run the body of a function in the page; gives what it returns, once a promise is kept."""
        return self.driver.execute_script(script, *arguments)

    def waits_for(self, condition: str, seconds: float = PATIENCE) -> None:
        """Wait until an expression of JavaScript is true."""
        end = time.monotonic() + seconds
        while not self.run(f"return Boolean({condition})"):
            if time.monotonic() > end:
                shown = self.text("main")[:SHOWN]
                raise AssertionError(f"in {self.name} never so: {condition}\nshown: {shown}")
            time.sleep(0.1)

    def waits_for_outcome(self, outcome: str) -> None:
        """Wait until the bar shows an outcome: pass, fail, cannot-say, unfinished."""
        self.waits_for(f"document.querySelector('[data-verdict][data-outcome=\"{outcome}\"]')")

    def waits_for_text(self, text: str, css: str = "body") -> None:
        """Wait until a text is shown in the first element that fits, however it is broken up."""
        shown = f"document.querySelector({json.dumps(css)})?.innerText.replaceAll(/\\s+/g, ' ')"
        self.waits_for(f"{shown}.includes({json.dumps(' '.join(text.split()))})")

    def find(self, css: str) -> WebElement:
        """Find the first element that fits."""
        return self.driver.find_element("css selector", css)

    def text(self, css: str) -> str:
        """Return the text that is shown in the first element that fits."""
        return str(self.run("return document.querySelector(arguments[0])?.innerText ?? ''", css))

    def click(self, css: str) -> None:
        """Click the first element that fits, in the middle of the screen."""
        self.run("document.querySelector(arguments[0]).scrollIntoView({ block: 'center' })", css)
        self.find(css).click()

    def field(self, *path: str) -> WebElement:
        """Find a field of a form by the names that lead to it, as device, type."""
        found: WebElement = self.run(FIELD, *path)
        return found

    def types(self, text: str, *path: str) -> None:
        """Type into a field of a form, key by key, in place of what is there."""
        box = self.field(*path).find_element("css selector", "input:not([type=radio])")
        box.clear()
        box.send_keys(text)

    def chooses(self, value: str, *path: str) -> None:
        """Choose a value of a field, from a list or from buttons."""
        field = self.field(*path)
        if lists := field.find_elements("css selector", "select"):
            Select(lists[0]).select_by_value(value)
            return
        self.run("arguments[0].querySelector(arguments[1]).click()", field, f"[value='{value}']")

    def pastes(self, text: str, css: str) -> None:
        """Put a text into a box as from the clipboard."""
        self.run(PASTE, css, text)

    def picture(self, css: str = "") -> bytes:
        """Return a picture, as PNG, of the first element that fits, or of the window."""
        return self.find(css).screenshot_as_png if css else self.driver.get_screenshot_as_png()

    def keeps(self, **labels: str) -> None:
        """Keep the verdict that is shown in the job log, under labels."""
        self.click("[data-keep] summary")
        self.waits_for("document.querySelector('[data-keep] [data-alive]')")
        for name, text in labels.items():
            self.find(f"[data-keep] [name={name}]").send_keys(text)
        self.click("[data-keep] form button")
        self.waits_for_text("Kept", "[data-keep] [data-told]")

    def forgets(self) -> None:
        """Lose what was remembered or kept of the host, but for its offline copy."""
        self.driver.get(f"{self.host.origin}/nothing-here")
        self.run(CLEAR_ALL)
        self.run(DROP_DATABASES)
