"""The offline copy on a phone: what lies in it, and how a test damages it."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Locator, Page, expect

from build_tools.files.media_types import TYPES
from tests.browser.phone import PATIENCE
from tests.browser.starts import LENGTH

# Each entry whose bytes are not those of the hash in its key, or whose type is not of its name.
WRONG = """
async (types) => {
  const wrong = [];
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const { url } of await cache.keys()) {
      const entry = await cache.match(url);
      const { pathname, searchParams } = new URL(url);
      const squeezed = entry.headers.has("X-Squeezed");
      const body = squeezed ? entry.body.pipeThrough(new DecompressionStream("gzip")) : entry.body;
      const bytes = await new Response(body).arrayBuffer().catch(() => new ArrayBuffer(0));
      const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
      const hash = btoa(String.fromCharCode(...digest));
      const type = entry.headers.get("Content-Type").split(";")[0];
      const wanted = types[pathname.slice(pathname.lastIndexOf("."))];
      const runs = pathname.endsWith(".js") ? type.endsWith("/javascript") : type === wanted;
      if (hash !== searchParams.get("hash") || !runs) {
        wrong.push(`${name} ${pathname} ${type}`);
      }
    }
  }
  return wrong;
}
"""
DAMAGE = """
async ([ending, way]) => {
  const ways = {
    "half of it": (bytes) => bytes.slice(0, bytes.length / 2),
    "one byte of it": (bytes) => { bytes[bytes.length - 1000] ^= 1; return bytes; },
    "its type": (bytes) => bytes,
    "all of it": () => null,
  };
  let count = 0;
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    for (const { url } of await cache.keys()) {
      if (new URL(url).pathname.endsWith(ending)) {
        const entry = await cache.match(url);
        const headers = new Headers(entry.headers);
        if (way === "its type") {
          headers.set("Content-Type", "application/octet-stream");
        }
        const made = ways[way](new Uint8Array(await entry.arrayBuffer()));
        await cache.delete(url);
        made && await cache.put(url, new Response(made, { headers }));
        count += 1;
      }
    }
  }
  return count;
}
"""


def state(page: Page) -> Locator:
    """What the page says of the copy."""
    return page.locator("[data-offline]")


def wait_for_copy(page: Page) -> None:
    """Wait until the page says that it works offline."""
    expect(state(page)).to_contain_text("Works offline", timeout=PATIENCE)


def damage(page: Page, ending: str, way: str) -> None:
    """Change what is kept of the file whose place ends so, and let the next start be ordinary."""
    assert page.evaluate(DAMAGE, [ending, way]) == 1
    page.evaluate(f"localStorage.removeItem('{LENGTH}')")


def wrong_entries(page: Page) -> Any:
    """Return every entry, of any build, that is not as its build made it."""
    return page.evaluate(WRONG, TYPES)
