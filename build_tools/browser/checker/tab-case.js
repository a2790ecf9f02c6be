import { ROOT } from "../shared/site-urls.js";

const KEY = `${ROOT.pathname} typed`;

let isFirst = true;

/**
 * Hold for a reload of this tab what was typed a moment ago.
 *
 * Inputs: what was typed; the addresses at which the tab may come back.
 */
export function holdTyped(typed, places) {
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ places, typed }));
  } catch {
    // Storage may be full or forbidden: then the address alone holds it.
  }
}

/** What was typed at this address before the tab was loaded again, else null. */
export function typedBefore() {
  const [opened] = performance.getEntriesByType("navigation");
  const wanted = isFirst && opened?.type === "reload";
  isFirst = false; // a page that follows in place is opened, not loaded again
  try {
    const { places, typed } = JSON.parse(sessionStorage.getItem(KEY));
    return wanted && places.includes(place()) ? typed : null;
  } catch {
    return null;
  }
}

/** Where the tab is: an address of this site without its host. */
export function place() {
  return location.pathname + location.hash;
}
