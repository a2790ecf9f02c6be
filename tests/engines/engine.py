"""What a reader does in any browser engine, in the words of the tests."""

from __future__ import annotations

import time
from abc import ABC, abstractmethod
from typing import Any

from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.ui import Select

from tests.browser.host import Host

WIDTH, HEIGHT = 412, 915  # a phone [px]
PATIENCE = 30  # seconds: a machine under load starts Python slowly
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

    def restarts(self) -> None:
        """End the browser and start it again."""
        self.stop()
        self.start()

    def open(self, place: str = "") -> None:
        """Open a page of the site by its place, as checkers/readings/, in a new document."""
        if "#" in place:
            self.driver.get("about:blank")  # an address that differs after its # is not opened anew
        self.driver.get(self.host.address + place)

    def reloads(self) -> None:
        """Open the same page again."""
        self.driver.refresh()

    def run(self, script: str, *arguments: Any) -> Any:
        """Run the body of a function in the page; gives what it returns, once a promise is kept."""
        return self.driver.execute_script(script, *arguments)

    def waits_for(self, condition: str, seconds: float = PATIENCE) -> None:
        """Wait until an expression of JavaScript is true."""
        end = time.monotonic() + seconds
        while not self.run(f"return Boolean({condition})"):
            if time.monotonic() > end:
                raise AssertionError(f"in {self.name} never so: {condition}\n{self.text('body')}")
            time.sleep(0.1)

    def waits_for_outcome(self, outcome: str) -> None:
        """Wait until the bar shows an outcome: pass, fail, cannot-say, unfinished."""
        self.waits_for(f"document.querySelector('[data-verdict][data-outcome=\"{outcome}\"]')")

    def waits_for_text(self, text: str, css: str = "body") -> None:
        """Wait until a text is shown somewhere in the first element that fits."""
        found = f"document.querySelector({css!r})?.innerText"
        self.waits_for(f"{found}?.replaceAll('\\u00a0', ' ').includes({text!r})")

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

    def picture(self, css: str = "") -> bytes:
        """Return a picture, as PNG, of the first element that fits, or of the window."""
        return self.find(css).screenshot_as_png if css else self.driver.get_screenshot_as_png()

    def forgets(self) -> None:
        """Lose what was remembered or kept of the host, but for its offline copy."""
        if str(self.driver.current_url).startswith(self.host.origin):
            self.run(CLEAR_ALL)
            self.driver.get("about:blank")
            self.driver.get(f"{self.host.origin}/nothing-here")  # no script of a page runs there
            self.run(CLEAR_ALL)
            self.run(DROP_DATABASES)
        self.driver.get("about:blank")
