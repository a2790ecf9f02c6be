"""WebKit as GTK has it, in the small browser that comes with it, on a screen that nobody sees."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

from selenium.webdriver.remote.client_config import ClientConfig
from selenium.webdriver.remote.file_detector import UselessFileDetector
from selenium.webdriver.remote.remote_connection import RemoteConnection
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.webkitgtk.options import Options
from selenium.webdriver.webkitgtk.service import Service

from tests.engines.engine import HEIGHT, WIDTH, Engine

DRIVER = "WebKitWebDriver"
SCREEN = "Xvfb"
BROWSERS = "**/webkit2gtk-4.*/MiniBrowser"
LIBRARIES = (Path("/usr/lib"), Path("/usr/libexec"))
# Without a toolbar a window may be as narrow as a phone. What Safari has and this build leaves off:
ARGUMENTS = ("--automation", "--full-screen", "--features=+StorageAPI,+StorageAPIEstimate")


def missing() -> str:
    """Tell what this engine needs and the machine lacks, or nothing."""
    if not (shutil.which(DRIVER) and _browser()):
        return "no WebKit with a driver (Debian: webkit2gtk-driver)"
    return "" if shutil.which(SCREEN) else "no screen for WebKit (Debian: xvfb)"


def _browser() -> Path | None:
    found = (path for folder in LIBRARIES if folder.is_dir() for path in folder.glob(BROWSERS))
    return max(found, default=None)


class WebKit(Engine):
    """WebKit by its own WebDriver; what it keeps is gone when it ends."""

    name = "webkit"

    def __init__(self) -> None:
        reading, writing = os.pipe()
        size = f"{WIDTH}x{HEIGHT}x24"
        self.screen = subprocess.Popen(
            [SCREEN, "-displayfd", str(writing), "-screen", "0", size, "-nolisten", "tcp"],
            pass_fds=[writing],
            stderr=subprocess.DEVNULL,
        )
        os.close(writing)
        with os.fdopen(reading) as told:
            self.display = f":{told.readline().strip()}"
        self.start()

    def start(self) -> None:
        """Start the browser in a window of the size of a phone."""
        options = Options()
        options.binary_location = str(_browser())
        for argument in ARGUMENTS:
            options.add_argument(argument)
        own = {"DISPLAY": self.display, "GDK_BACKEND": "x11", "NO_AT_BRIDGE": "1"}
        self.service = Service(shutil.which(DRIVER), env={**os.environ, **own})
        self.service.start()
        self.driver = WebDriver(
            RemoteConnection(client_config=ClientConfig(self.service.service_url)),
            options=options,
            file_detector=UselessFileDetector(),
        )
        self.driver.set_window_rect(width=WIDTH, height=HEIGHT)

    def stop(self) -> None:
        """End the browser."""
        self.driver.quit()
        self.service.stop()

    def ends(self) -> None:
        """End the screen too."""
        self.stop()
        self.screen.terminate()
        self.screen.wait()
