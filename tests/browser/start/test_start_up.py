"""Every start after the first is from an image of the memory, unless that is not as it must be."""

from __future__ import annotations

import json
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from checkers.catalogue import CHECKERS
from tests.browser.guard import Guard
from tests.browser.phone import PATIENCE, Phone, change_worker
from tests.browser.sampling import sampled
from tests.browser.starts import (
    IMAGE_IS_KEPT,
    LENGTH,
    ROOT,
    visit,
    wait_for_image,
    was_from_image,
)

OPEN = f"""
  const folder = await navigator.storage.getDirectory();
  const file = await folder.getFileHandle("start-image {ROOT}");
"""
HASH_KEPT = f"""
(async () => {{
  {OPEN}
  return String(new Uint8Array(await (await file.getFile()).slice(-32).arrayBuffer()));
}})()
"""
FORGET = f"localStorage.removeItem('{LENGTH}')"
# The way is a function from the bytes to what is kept in their place.
CHANGE = f"""
async (way) => {{
  {OPEN}
  const bytes = new Uint8Array(await (await file.getFile()).arrayBuffer());
  const packed = bytes.subarray(0, -32);
  const hashed = async () => {{
    bytes.set(new Uint8Array(await crypto.subtle.digest("SHA-256", packed)), packed.length);
    return bytes;
  }};
  // The note stands last; its length in bytes is the third word (memory-pages.js).
  const inNote = (from, to) => {{
    const [, , length] = new Uint32Array(bytes.buffer, 0, 3);
    const start = packed.length - length;
    const note = new TextDecoder().decode(packed.subarray(start));
    packed.set(new TextEncoder().encode(note.replaceAll(from, to)), start);
    return hashed();
  }};
  const ways = {{
    "all of it": () => null,
    "half of it": () => bytes.slice(0, bytes.length / 2),
    "nothing of it": () => new Uint8Array(0),
    "one bit of it": () => {{ bytes[bytes.length - 41] ^= 1; return bytes; }},
    "another build": () => inNote("Mozilla", "Mozarta"),
    "another length": () => {{ bytes[2] += 1; return hashed(); }},
    "another reply": () => inNote(JSON.stringify(`"outcome": "pass"`).slice(1, -1),
      JSON.stringify(`"outcome": "fail"`).slice(1, -1)),
    "no memory": () => {{ packed.fill(0, 4 * 4000, 4 * 4000 + 8000000); return hashed(); }},
  }};
  const made = await ways[way]();
  if (!made) {{
    await folder.removeEntry(file.name);
    return;
  }}
  const writer = await file.createWritable();
  await writer.write(made);
  await writer.close();
}}
"""
# Each with what the one note in the console says of it.
WAYS = {
    "all of it": "NotFoundError",
    "half of it": "not whole",
    "nothing of it": "not whole",
    "one bit of it": "not whole",
    "another build": "another build",
    "another length": "another length",
    "another reply": "answers otherwise",
    "no memory": "",
}

ASK = """
([number, slug, request]) => new Promise((done) => {
  [globalThis.theWorker, globalThis.theReplies].forEach((one) => one.addEventListener("message",
    ({ data }) => { if (data.number === number) { done(data.reply); } }));
  globalThis.theWorker.postMessage({ number, slug, request });
})
"""


@pytest.mark.first_visit
def test_the_second_start_is_from_an_image(phone: Phone, page: Page, notes: list[str]) -> None:
    """The first start takes the image; the second uses it, and says nothing."""
    visit(phone)
    assert not was_from_image(page)
    wait_for_image(page)

    visit(phone)

    assert was_from_image(page)
    assert notes == []


@pytest.mark.parametrize("change", sampled(WAYS, always=1))
def test_an_image_that_does_not_fit_is_not_used(
    phone: Phone, page: Page, notes: list[str], guard: Guard, change: str
) -> None:
    """The verdict comes all the same, with one note, and the next start has an image again."""
    guard.allow("wasm", "Pyodide", "RuntimeError")
    visit(phone)
    wait_for_image(page)
    page.evaluate(CHANGE, change)

    visit(phone)

    assert not was_from_image(page)
    assert len(notes) == 1, notes
    assert WAYS[change] in notes[0]
    wait_for_image(page)
    visit(phone)
    assert was_from_image(page)
    assert len(notes) == 1, notes


@pytest.mark.slow
@pytest.mark.usefixtures("notes")
@pytest.mark.parametrize("length", sampled([999_999_999_999, 3_000_000_000, -1, "many"], always=1))
def test_a_length_that_no_image_has_is_passed_by(
    phone: Phone, page: Page, guard: Guard, length: object
) -> None:
    """Where the length that is remembered was changed, the start is an ordinary one."""
    guard.allow("wasm", "Pyodide", "RuntimeError")
    visit(phone)
    wait_for_image(page)
    page.evaluate(f"localStorage.setItem('{LENGTH}', '{json.dumps(length)}')")

    visit(phone)

    assert not was_from_image(page)
    wait_for_image(page)
    visit(phone)
    assert was_from_image(page)


@pytest.mark.slow
def test_another_browser_does_not_use_the_image(phone: Phone, page: Page, notes: list[str]) -> None:
    """The runtime fits itself to the browser, so an update of the browser ends an image."""
    visit(phone)
    wait_for_image(page)
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setUserAgentOverride", {"userAgent": "A newer browser"})

    visit(phone)

    assert page.evaluate("navigator.userAgent") == "A newer browser"
    assert not was_from_image(page)
    assert len(notes) == 1, notes


@pytest.mark.slow
@pytest.mark.first_visit
def test_where_nothing_can_be_kept_the_checkers_run(
    phone: Phone, page: Page, notes: list[str]
) -> None:
    """A browser without a place for the image starts the ordinary way, and says nothing of it."""
    change_worker(page, "delete StorageManager.prototype.getDirectory;")
    visit(phone)
    page.wait_for_timeout(2500)

    assert not was_from_image(page)
    assert not page.evaluate(IMAGE_IS_KEPT)
    assert notes == []


@pytest.mark.slow
def test_a_checker_that_the_image_lacks_is_added_to_it(
    phone: Phone, page: Page, notes: list[str]
) -> None:
    """Its page starts from the image, fetches the files, and keeps an image with both checkers."""
    visit(phone)
    wait_for_image(page)
    before = page.evaluate(HASH_KEPT)

    phone.open("safety/")
    phone.open("checkers/earth-electrode/")
    expect(page.locator('[data-checker="earth-electrode"]')).to_be_visible(timeout=PATIENCE)
    for _ in range(PATIENCE // 100):
        if page.evaluate(HASH_KEPT) != before:
            break
        page.wait_for_timeout(100)
    phone.open("safety/")
    phone.open("checkers/earth-electrode/")
    phone.waits_until_running()

    assert page.evaluate(HASH_KEPT) != before
    assert was_from_image(page)
    assert notes == []


def test_both_starts_give_the_same_replies(phone: Phone, page: Page, notes: list[str]) -> None:
    """Every example of every checker, byte for byte: no verdict hangs on the order of a hash."""
    visit(phone)
    ordinary = _replies(page)
    wait_for_image(page)
    page.evaluate(FORGET)
    visit(phone)
    again = _replies(page)
    wait_for_image(page)
    visit(phone)
    assert was_from_image(page)
    from_image = _replies(page)

    assert notes == []
    assert ordinary == again, "two seeds of the hash"
    assert ordinary == from_image


def _replies(page: Page) -> list[Any]:
    asked = [
        (checker.slug, json.dumps({"on": "2026-11-24", **example.request}))
        for checker in CHECKERS
        for example in checker.examples
    ]
    return [page.evaluate(ASK, [10_000 + n, *one]) for n, one in enumerate(asked)]


def test_the_worker_outlives_the_page_in_view(phone: Phone, page: Page, notes: list[str]) -> None:
    """A page opened by a link inside the site asks the same worker."""
    visit(phone)
    page.evaluate("globalThis.theWorker.mark = 1")
    page.locator('a[href$="earth-electrode/"]').first.evaluate("(link) => link.click()")
    expect(page.locator('[data-checker="earth-electrode"]')).to_be_visible(timeout=PATIENCE)

    assert page.evaluate("globalThis.theWorker.mark") == 1
    assert [x["said"] for x in page.evaluate("globalThis.heard") if x.get("said") == "ready"] == [
        "ready"
    ]
    assert notes == []
