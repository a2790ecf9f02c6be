"""A phone on which one test after another opens the site, each as if nobody had before."""

from __future__ import annotations

from playwright.sync_api import Browser, Page

from tests.browser.guard import TELL_VIOLATIONS
from tests.browser.host import PATH, Host
from tests.browser.phone import NO_COPY, PATIENCE, PHONE, Phone

FIRST = "checkers/readings/"
HAS_IMAGE = f"() => localStorage.getItem('/{PATH}/ start image') > 0"


class UsedPhone:
    """A context that has the runtime at hand, keeps no offline copy, and can forget the rest.

    Its first page stays open. A page that this one opens shares its process, where the runtime is
    compiled already: that saves the greater part of every start.
    """

    def __init__(self, browser: Browser, host: Host) -> None:
        self.origin = host.origin
        self.context = browser.new_context(**PHONE)
        self.context.add_init_script(TELL_VIOLATIONS)
        self.context.add_init_script(NO_COPY)
        self.first = self.context.new_page()
        phone = Phone(self.first, host)
        phone.open(FIRST)
        phone.waits_until_running()
        self.first.wait_for_function(HAS_IMAGE, timeout=PATIENCE)
        self.storage = self.context.new_cdp_session(self.first)

    def open_page(self) -> Page:
        """Open an empty page beside the first."""
        with self.context.expect_page() as opened:
            self.first.evaluate("void window.open('about:blank')")
        return opened.value

    def forget(self) -> None:
        """Close every other page, and lose all that was remembered, kept or granted."""
        for page in self.context.pages:
            if page is not self.first:
                page.close()
        self.context.clear_permissions()
        # Pages of one process share what they hold of it; clearing from outside may come late.
        self.first.evaluate("localStorage.clear()")
        kinds = "cookies,indexeddb,local_storage"
        self.storage.send(
            "Storage.clearDataForOrigin", {"origin": self.origin, "storageTypes": kinds}
        )
