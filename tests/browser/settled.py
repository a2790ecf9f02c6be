"""A page that has come to rest: only then is it measured."""

from __future__ import annotations

from playwright.sync_api import Page

from tests.browser.phone import PATIENCE

# Colours and boxes that are on their way to others are nobody's choice: fonts are there, nothing
# that ends is moving, and two frames in turn show a page of the same size.
AT_REST = """
async (patience) => {
  const start = performance.now();
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const moving = () => document.getAnimations().filter(({ effect, playState }) =>
    playState === "running" && Number.isFinite(effect.getComputedTiming().endTime));
  const size = () => {
    const { scrollWidth, scrollHeight } = document.documentElement;
    return `${scrollWidth} ${scrollHeight}`;
  };
  await document.fonts.ready;
  for (let before = ""; moving().length > 0 || before !== size();) {
    before = size();
    if (performance.now() - start > patience) { throw new Error("never at rest"); }
    await Promise.all(moving().map(({ finished }) => finished.catch(() => null)));
    await frame();
    await frame();
  }
}
"""


def settle(page: Page) -> None:
    """Wait until all that a page needs has come and nothing on it moves any more."""
    page.wait_for_load_state(timeout=PATIENCE)
    page.evaluate(AT_REST, PATIENCE)


def page_width(page: Page, *, scripts: bool = True) -> int:
    """Return how wide a page is [px] once it is at rest, with what runs out of the screen.

    A browser that runs no scripts calls no frame back, and nothing on its page moves by script.
    """
    if scripts:
        settle(page)
    width: int = page.evaluate("document.documentElement.scrollWidth")
    return width
