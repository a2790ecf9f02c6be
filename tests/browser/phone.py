"""What a reader does with a checker on a phone, in the words of the tests."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Locator, Page, Route

from tests.browser.host import Host

PHONE: dict[str, Any] = {
    "viewport": {"width": 412, "height": 915},
    "has_touch": True,
    "is_mobile": True,
    "service_workers": "allow",
}
NO_COPY = "delete Navigator.prototype.serviceWorker"  # for tests that open many pages
PATIENCE = 30_000  # milliseconds: a machine under load starts Python slowly

NUMBERS = "[data-inputs] input:is([inputmode=decimal], [inputmode=numeric]):visible"


class Phone:
    """One page on the site, seen as its reader sees it."""

    def __init__(self, page: Page, host: Host) -> None:
        self.page = page
        self.host = host

    def open(self, place: str = "") -> None:
        """Open a page of the site by its place, as checkers/readings/."""
        self.page.goto(self.host.address + place)

    @property
    def verdict(self) -> Locator:
        """The bar that holds the verdict."""
        return self.page.locator("[data-verdict]")

    @property
    def results(self) -> Locator:
        """Everything that was found."""
        return self.page.locator("[data-results]")

    def waits_for(self, outcome: str) -> None:
        """Wait until the bar shows an outcome: pass, fail, cannot-say, unfinished."""
        self.page.locator(f'[data-verdict][data-outcome="{outcome}"]').wait_for(timeout=PATIENCE)

    def waits_until_running(self) -> None:
        """Wait until Python has given its first answer."""
        self.page.locator('[data-verdict]:not([data-outcome="waiting"])').wait_for(timeout=PATIENCE)

    def field(self, *path: str) -> Locator:
        """Find a field by the names that lead to it, as device, type."""
        found = self.page.locator("[data-inputs]")
        for name in path:
            if name.isdecimal():
                found = found.locator("[data-entry]").nth(int(name))
            else:
                kinds = (f'[data-{kind}="{name}"]' for kind in ("field", "group", "many"))
                found = found.locator(", ".join(kinds)).first
        return found

    def types(self, text: str, *path: str) -> None:
        """Type into a field, key by key."""
        box = self.field(*path).locator("input:not([type=radio])").first
        box.fill("")
        box.press_sequentially(text)

    def unfolds(self, field: Locator) -> None:
        """Open the line that an entry is folded to, if the field is folded away in it."""
        shut = field.locator("xpath=ancestor::details[@data-rest and not(@open)]")
        if shut.count():
            shut.locator(":scope > summary").click()

    def chooses(self, value: str, *path: str) -> None:
        """Choose a value, from a list or from buttons."""
        field = self.field(*path)
        self.unfolds(field)
        select = field.locator("select")
        if select.count():
            select.select_option(value)
        else:
            field.locator(f'input[type=radio][value="{value}"]').check(force=True)

    def types_nonsense(self) -> Locator:
        """Type a text that is no number into the first field for one, and have it judged."""
        box = self.page.locator(NUMBERS).first
        box.fill("hello")
        box.blur()
        for button in self.page.locator("[data-judge]").all():
            button.click()
        return box


def change_worker(page: Page, statements: str) -> None:
    """Let a page's worker run statements of JavaScript before it hears of its first message."""

    def add(route: Route) -> None:
        if route.request.resource_type == "fetch":
            route.continue_()  # the page compares it with its hash
            return
        text = route.fetch().text()
        route.fulfill(body=f"{statements}\n{text}", content_type="text/javascript")

    page.route("**/worker.js", add)
