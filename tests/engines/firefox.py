"""Firefox, without a window on the screen, with a profile that lasts as long as the tests."""

from __future__ import annotations

import base64
import hashlib
import json
import shutil
import subprocess
import tempfile
import time
from pathlib import Path
from typing import Any

from selenium.webdriver.firefox.options import Options
from selenium.webdriver.remote.file_detector import UselessFileDetector
from selenium.webdriver.remote.webdriver import WebDriver

from tests.engines.engine import HEIGHT, PATIENCE, WIDTH, Engine
from tests.engines.marionette import Marionette

NAMES = ("firefox-esr", "firefox")
PREFERENCES = {"marionette.port": 0, "browser.sessionstore.resume_from_crash": False}
ARGUMENTS = ("--headless", "--marionette", "--remote-allow-system-access", "--no-remote")
AS_A_PHONE = """
for (const [name, size] of [["width", arguments[0]], ["height", arguments[1]]]) {
  gBrowser.selectedBrowser.style.setProperty(name, `${size}px`, "important");
  gBrowser.selectedBrowser.style.setProperty(`min-${name}`, `${size}px`, "important");
  gBrowser.selectedBrowser.style.setProperty(`max-${name}`, `${size}px`, "important");
}
"""
SET = """
const { prefs } = Services;
const kinds = [[prefs.PREF_BOOL, "Bool"], [prefs.PREF_INT, "Int"], [prefs.PREF_STRING, "String"]];
const kindOf = (name) => new Map(kinds).get(prefs.getPrefType(name));
const before = {};
for (const [name, value] of Object.entries(arguments[0])) {
  before[name] = prefs.prefHasUserValue(name) ? prefs[`get${kindOf(name)}Pref`](name) : null;
  if (value === null) {
    prefs.clearUserPref(name);
  } else {
    const kind = { boolean: "Bool", number: "Int", string: "String" }[typeof value];
    prefs[`set${kind}Pref`](name, value);
  }
}
return before
"""

# A page that is left while a script comes has nothing of it, which is told as a wrong hash.
CUT_OFF = base64.b64encode(hashlib.sha256(b"").digest()).decode()
TOLD = """
const told = Services.console.getMessageArray()
  .filter((one) => one instanceof Ci.nsIScriptError && !(one.flags & Ci.nsIScriptError.warningFlag))
  .filter(({ sourceName }) => sourceName.startsWith(arguments[0]))
  .map(({ errorMessage }) => errorMessage);
Services.console.reset();
return told
"""


def missing() -> str:
    """Tell what this engine needs and the machine lacks, or nothing."""
    return "" if any(map(shutil.which, NAMES)) else "no Firefox (Debian: firefox-esr)"


class Firefox(Engine):
    """Firefox by Marionette."""

    name = "firefox"

    def __init__(self) -> None:
        self.profile = Path(tempfile.mkdtemp(prefix="firefox-"))
        lines = (f"user_pref({json.dumps(k)}, {json.dumps(v)});\n" for k, v in PREFERENCES.items())
        (self.profile / "user.js").write_text("".join(lines), encoding="utf-8")
        self.start()

    def start(self) -> None:
        """Start the browser with its profile, and put its page into the size of a phone."""
        program = next(filter(None, map(shutil.which, NAMES)))
        told = self.profile / "MarionetteActivePort"
        told.unlink(missing_ok=True)
        self.process = subprocess.Popen(
            [program, *ARGUMENTS, "--profile", str(self.profile)],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        self.connection = Marionette(_port(told))
        self.driver = WebDriver(
            self.connection, options=Options(), file_detector=UselessFileDetector()
        )
        self.run_inside(AS_A_PHONE, WIDTH, HEIGHT)

    def stop(self) -> None:
        """End the browser as its menu does: what it kept is written."""
        self.connection.ask("Marionette:Quit", {"flags": ["eAttemptQuit"]})
        self.connection.close()
        self.process.wait(PATIENCE)

    def ends(self) -> None:
        """End the browser, and remove its profile."""
        self.stop()
        shutil.rmtree(self.profile, ignore_errors=True)

    def run_inside(self, script: str, *arguments: Any) -> Any:
        """Run the body of a function not in the page but in the browser itself."""
        self.connection.ask("Marionette:SetContext", {"value": "chrome"})
        try:
            return self.run(script, *arguments)
        finally:
            self.connection.ask("Marionette:SetContext", {"value": "content"})

    def complaints(self) -> list[str]:
        """Return what pages of the host have broken since last asked: errors, and their policy."""
        found: list[str] = self.run_inside(TOLD, self.host.origin)
        return [one for one in found if CUT_OFF not in one]

    def prefers(self, preferences: dict[str, Any]) -> dict[str, Any]:
        """Set preferences; gives what they were, where None stands for the browser's own."""
        before: dict[str, Any] = self.run_inside(SET, preferences)
        return before


def _port(told: Path) -> int:
    for _ in range(PATIENCE * 10):
        if told.is_file() and (text := told.read_text()).strip():
            return int(text)
        time.sleep(0.1)
    raise AssertionError("Firefox does not say on which port it listens")
