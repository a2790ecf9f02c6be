"""Find the browser that the browser tests and the measurements drive."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path

from build_tools.problems import Problem

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
    """Give the path of a Chromium or Chrome.

    Args:
        variables: environment variables; CHROMIUM names one, PATH is searched.

    Returns:
        The program's path.

    Raises:
        Problem: there is none, or CHROMIUM names what is not there.
    """
    if named := variables.get(VARIABLE):
        if Path(named).is_file():
            return Path(named)
        raise Problem(f"{VARIABLE} names {named}, which is not there.", "correct or unset it.")
    found = next(_candidates(variables), None)
    if found is None:
        raise Problem(
            "No Chromium or Chrome on this machine, which the browser tests need.",
            f"install one (Debian: apt-get install chromium) or set {VARIABLE} to its path; "
            f"or go without them: python3 -m build_tools test {WITHOUT}",
        )
    return found


def _candidates(variables: Mapping[str, str]) -> Iterator[Path]:
    for name in NAMES:
        if path := shutil.which(name, path=variables.get("PATH", "")):
            yield Path(path)
    for place in ELSEWHERE:
        variable, _, rest = place.rpartition("}")
        file = Path(variables.get(variable.removeprefix("{"), "") + rest)
        if file.is_file():
            yield file
