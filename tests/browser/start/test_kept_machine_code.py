"""A start from an image finds the machine code beside it, and asks the network for nothing."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

from tests.browser.guard import Guard
from tests.browser.host import Host
from tests.browser.phone import NO_COPY, Phone
from tests.browser.sampling import sampled
from tests.browser.starts import ROOT, visit, wait_for_image, was_from_image

pytestmark = pytest.mark.first_visit

FILE = "/runtime/pyodide.asm.wasm"
# Each with what it makes of the bytes that are kept; null takes the file away.
SPOILT = {
    "gone": "() => null",
    "half of it": "(bytes) => bytes.slice(0, bytes.length / 2)",
    "one bit of it": "(bytes) => { bytes[bytes.length - 1000] ^= 1; return bytes; }",
}
SPOIL = f"""
async (way) => {{
  const folder = await navigator.storage.getDirectory();
  const file = await folder.getFileHandle("machine code {ROOT}");
  const made = way(new Uint8Array(await (await file.getFile()).arrayBuffer()));
  if (!made) {{
    await folder.removeEntry(file.name);
    return;
  }}
  const writer = await file.createWritable();
  await writer.write(made);
  await writer.close();
}}
"""


@pytest.fixture
def asked(page: Page, host: Host) -> Iterator[list[str]]:
    """What the host is asked for; the browser's own cache and an offline copy do not answer."""
    page.add_init_script(NO_COPY)
    session = page.context.new_cdp_session(page)
    session.send("Network.setCacheDisabled", {"cacheDisabled": True})
    yield host.asked
    session.detach()


def test_the_second_start_does_not_fetch_the_machine_code(
    phone: Phone, page: Page, asked: list[str], notes: list[str]
) -> None:
    """It is kept beside the image."""
    visit(phone)
    wait_for_image(page)
    assert FILE in asked
    asked.clear()

    visit(phone)

    assert was_from_image(page)
    assert FILE not in asked
    assert notes == []


@pytest.mark.slow
def test_an_image_is_kept_where_the_machine_code_cannot_be(
    phone: Phone, page: Page, guard: Guard, notes: list[str]
) -> None:
    """The network goes after the verdict: the image is kept all the same, and served from later."""
    guard.allow("Failed to load resource", "ERR_FAILED")
    page.add_init_script(NO_COPY)
    visit(phone)
    page.route(f"**{FILE}", lambda route: route.abort())
    wait_for_image(page)
    page.unroute_all()

    visit(phone)

    assert was_from_image(page)
    assert notes == []


@pytest.mark.parametrize("way", sampled(SPOILT, always=1))
def test_machine_code_that_is_not_of_this_build_is_fetched(
    phone: Phone, page: Page, asked: list[str], notes: list[str], way: str
) -> None:
    """The start is from the image all the same, and nobody need hear of it."""
    visit(phone)
    wait_for_image(page)
    page.evaluate(SPOIL.replace("(way)", "()").replace("way(", f"({SPOILT[way]})("))
    asked.clear()

    visit(phone)

    assert was_from_image(page)
    assert FILE in asked
    assert notes == []
