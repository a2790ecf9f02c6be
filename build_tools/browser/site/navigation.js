import { ROOT } from "../shared/site-urls.js";
import { theme } from "./theme.js";
import { isOpenedAnew } from "../basics/unsaved-work.js";

/**
 * Pages of this site replace one another inside the page, so that the worker lives on.
 *
 * The theme does the replacing; it only learns from a list of absolute addresses which
 * links it may follow, and a site that works under any path has no such list. Here a link
 * below the site's root that ends in a slash is one of its pages.
 */
export function followLinksInside() {
  document.body.addEventListener("click", (event) => {
    const link = event.target.closest?.("a[href]");
    if (!link || event.defaultPrevented || isForElsewhere(event, link)) {
      return;
    }
    event.preventDefault();
    go(new URL(link.href));
  });
}

function isForElsewhere(event, link) {
  const url = new URL(link.href);
  const asksMore = event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey;
  const inside = url.href.startsWith(ROOT.href) && url.pathname.endsWith("/");
  const here = url.pathname === location.pathname;
  return asksMore || link.target || link.hasAttribute("download") || !inside || here;
}

async function go(url) {
  await theme().catch(() => {});
  if (!globalThis.location$) {
    location.assign(url);
    return;
  }
  history.replaceState({ x: scrollX, y: scrollY }, "");
  history.pushState(null, "", url);
  isOpenedAnew();
  globalThis.location$.next(url);
}

let shown = location.pathname;

/** Take the focus to what has replaced the page before: keys go on from there, and it is read out. */
export function tellOfPage() {
  if (shown === location.pathname) {
    return;
  }
  shown = location.pathname;
  const asked = document.getElementById(location.hash.slice(1));
  const heading = asked ?? document.querySelector("main h1");
  heading?.setAttribute("tabindex", "-1");
  heading?.focus({ preventScroll: true });
}
