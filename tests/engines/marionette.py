"""Firefox's own protocol for remote control, as the far end of selenium's commands.

Marionette's messages are JSON, each after its length in bytes and a colon: `[0, number, name,
parameters]` asks, `[1, number, error, result]` answers. A Firefox needs no program between.

Source: Firefox Source Docs, "Remote protocols: Marionette, Protocol".
"""

from __future__ import annotations

import json
import socket
from typing import Any

from selenium.webdriver.remote.client_config import ClientConfig
from selenium.webdriver.remote.command import Command
from selenium.webdriver.remote.remote_connection import RemoteConnection

NAMES = {
    Command.NEW_SESSION: "WebDriver:NewSession",
    Command.GET: "WebDriver:Navigate",
    Command.GET_CURRENT_URL: "WebDriver:GetCurrentURL",
    Command.W3C_EXECUTE_SCRIPT: "WebDriver:ExecuteScript",
    Command.FIND_ELEMENT: "WebDriver:FindElement",
    Command.FIND_ELEMENTS: "WebDriver:FindElements",
    Command.FIND_CHILD_ELEMENT: "WebDriver:FindElement",
    Command.FIND_CHILD_ELEMENTS: "WebDriver:FindElements",
    Command.CLICK_ELEMENT: "WebDriver:ElementClick",
    Command.CLEAR_ELEMENT: "WebDriver:ElementClear",
    Command.SEND_KEYS_TO_ELEMENT: "WebDriver:ElementSendKeys",
    Command.GET_ELEMENT_TEXT: "WebDriver:GetElementText",
    Command.SCREENSHOT: "WebDriver:TakeScreenshot",
    Command.ELEMENT_SCREENSHOT: "WebDriver:TakeScreenshot",
    Command.NEW_WINDOW: "WebDriver:NewWindow",
    Command.SWITCH_TO_WINDOW: "WebDriver:SwitchToWindow",
    Command.SWITCH_TO_FRAME: "WebDriver:SwitchToFrame",
    Command.W3C_GET_WINDOW_HANDLES: "WebDriver:GetWindowHandles",
    Command.W3C_GET_CURRENT_WINDOW_HANDLE: "WebDriver:GetWindowHandle",
    Command.CLOSE: "WebDriver:CloseWindow",
    Command.W3C_ACTIONS: "WebDriver:PerformActions",
    Command.SET_TIMEOUTS: "WebDriver:SetTimeouts",
    Command.QUIT: "Marionette:Quit",
}
BELOW_ANOTHER = (Command.FIND_CHILD_ELEMENT, Command.FIND_CHILD_ELEMENTS)
FAILED = 500


class Marionette(RemoteConnection):
    """Carries selenium's commands to a Firefox that listens on a port of this machine."""

    browser_name = "firefox"

    def __init__(self, port: int) -> None:
        super().__init__(client_config=ClientConfig(f"http://127.0.0.1:{port}"))
        self.line = socket.create_connection(("127.0.0.1", port))
        self.stream = self.line.makefile("rb")
        self._read()  # a greeting comes first
        self.number = 0

    def execute(self, command: str, params: dict[str, Any]) -> dict[str, Any]:
        """Do one of selenium's commands; what is wrong is given as a server of WebDriver does."""
        rest = {key: value for key, value in params.items() if key != "sessionId"}
        if command == Command.NEW_SESSION:
            rest = {"capabilities": rest["capabilities"]}
        if command in BELOW_ANOTHER:
            rest["element"] = rest.pop("id")
        if command == Command.SCREENSHOT:
            rest = {"full": False}
        error, result = self.ask(NAMES[command], rest)
        if error:
            return {"status": FAILED, "value": json.dumps({"value": error})}
        alone = isinstance(result, dict) and set(result) == {"value"}
        return {"value": result["value"] if alone else result}

    def ask(self, name: str, parameters: dict[str, Any]) -> tuple[dict[str, Any] | None, Any]:
        """Send a command by Marionette's own name; gives the error, or none, and the result."""
        self.number += 1
        message = json.dumps([0, self.number, name, parameters]).encode()
        self.line.sendall(b"%d:%b" % (len(message), message))
        _, _, error, result = self._read()
        return error, result

    def close(self) -> None:
        """Leave the browser."""
        self.stream.close()
        self.line.close()

    def _read(self) -> Any:
        length = b""
        while (character := self.stream.read(1)) != b":":
            if not character:
                raise ConnectionError("Firefox has gone")
            length += character
        return json.loads(self.stream.read(int(length)))
