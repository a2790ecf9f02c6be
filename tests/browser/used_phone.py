"""A phone on which one test after another opens the site, each as if nobody had before."""

from __future__ import annotations

from playwright.sync_api import Browser

from tests.browser.guard import TELL_VIOLATIONS
from tests.browser.host import Host
from tests.browser.phone import NO_COPY, PATIENCE, PHONE, Phone

WARM = "checkers/readings/"
HAS_IMAGE = """
async () => (await caches.keys()).some((name) => name.includes("start image"))
"""


class UsedPhone:
    """A context that has the runtime at hand, keeps no offline copy, and can forget the rest."""

    def __init__(self, browser: Browser, host: Host) -> None:
        self.origin = host.origin
        self.context = browser.new_context(**PHONE)
        self.context.add_init_script(TELL_VIOLATIONS)
        self.context.add_init_script(NO_COPY)
        self.resting = self.context.new_page()
        self._start_once(host)
        self.storage = self.context.new_cdp_session(self.resting)

    def _start_once(self, host: Host) -> None:
        """Let the checkers start, so that later starts are as short as on a second visit."""
        page = self.context.new_page()
        phone = Phone(page, host)
        phone.open(WARM)
        phone.waits_until_running()
        page.wait_for_function(HAS_IMAGE, timeout=PATIENCE)
        page.close()

    def forget(self) -> None:
        """Close every page, and lose all that was remembered, kept or granted."""
        for page in self.context.pages:
            if page is not self.resting:
                page.close()
        self.context.clear_permissions()
        kinds = "cookies,indexeddb,local_storage"
        self.storage.send(
            "Storage.clearDataForOrigin", {"origin": self.origin, "storageTypes": kinds}
        )
