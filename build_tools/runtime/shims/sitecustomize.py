"""What Python does first of all in the browser, so that it is soon ready.

The collector of garbage waits: what is imported stays, and it would look through it again and
again. `checkers.contract.browser_image` lets it work once that is done.

The texts of which `dataclasses` makes methods were compiled at the build. One that is not among
them is compiled here, as ever.
"""

from __future__ import annotations

import dataclasses
import gc
import marshal
from types import CodeType
from typing import Any

from _class_texts import CODES
from _sha2 import sha256

gc.disable()


def _run(text: str, outer: dict[str, Any], names: dict[str, Any]) -> None:
    known = CODES.get(sha256(text.encode()).digest())
    code = marshal.loads(known) if known else _compiled(text)  # noqa: S302  # the build wrote it
    exec(code, outer, names)  # noqa: S102  # what the library itself does with the text


def _compiled(text: str) -> CodeType:
    return compile(text, "<string>", "exec", dont_inherit=True)


dataclasses.exec = _run
