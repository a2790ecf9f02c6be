import { openDevice } from "./indexed-db.js";
import { whyNotKept } from "./reasons.js";
import { openPage } from "./page-only.js";

let log = null;
let asking = null;

/**
 * The one log of this page, on the device or, where the browser refuses, in the page alone.
 *
 * It has `where` (device or page), `why` it is not on the device, entries(), change({what, puts,
 * takes}), lastChange() ({key, what} or null) and undo(key), which gives what it undid, or null
 * where another change has been made since. A change is made whole or not at all; it rejects with
 * the browser's error, and then nothing of it is kept. While nothing is held in the page alone, each
 * call tries the device anew.
 */
export async function openLog() {
  const before = await log;
  if (!before || before.isEmpty?.()) {
    log = openDevice().catch((error) => Object.assign(before ?? openPage(), { why: whyNotKept(error) }));
  }
  return log;
}

/**
 * Ask the browser to keep the log until the reader deletes it; false where it promises nothing.
 *
 * A browser may ask the reader first, and wait for ever: nothing else may wait for this.
 */
export function askToKeep() {
  asking ??= asked().finally(() => { asking = null; });
  return asking;
}

async function asked() {
  try {
    return await navigator.storage.persist();
  } catch {
    return false;
  }
}
