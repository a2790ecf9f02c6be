import { ROOT } from "./places.js";

const KEY = `${ROOT.pathname} typed`;

let isFirst = true;

/**
 * Hold for a reload of this tab what was typed a moment ago; false where the browser refuses.
 *
 * The address takes it a little later: browsers refuse addresses that change too often, and one
 * that is written while a reload has begun comes too late.
 */
export function holdTyped(typed) {
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ at: place(), typed }));
    return true;
  } catch {
    return false;
  }
}

/** What was typed at this address before the tab was loaded again, else null. */
export function typedBefore() {
  const [opened] = performance.getEntriesByType("navigation");
  const wanted = isFirst && opened?.type === "reload";
  isFirst = false; // a page that follows in place is opened, not loaded again
  try {
    const { at, typed } = JSON.parse(sessionStorage.getItem(KEY));
    return wanted && at === place() ? typed : null;
  } catch {
    return null;
  }
}

function place() {
  return location.pathname + location.hash;
}
