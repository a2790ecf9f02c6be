import { openDevice } from "./log-storage.js";
import { openPage } from "./log-unkept.js";

const SHORT = 2_000_000; // bytes left below which the reader is told

let log = null;

/**
 * The one log of this page, on the device or, where the browser refuses, in the page alone.
 *
 * It has `where` (device or page), `why` it is not on the device, entries(), change({what, puts,
 * takes}), lastChange() and undo(). A change is made whole or not at all; it rejects with the
 * browser's error, and then nothing of it is kept.
 */
export function openLog() {
  log ??= openDevice().catch((error) => openPage(refusal(error)));
  return log;
}

function refusal(error) {
  return error?.name === "VersionError"
    ? "the log on this device was written by a newer build of this site; load the newest build to see it"
    : "this browser keeps nothing for this site, as in some private windows or where storage is blocked";
}

/** Ask the browser to keep the log until the reader deletes it; false where it promises nothing. */
export async function askToKeep() {
  try {
    return await navigator.storage.persist();
  } catch {
    return false;
  }
}

/** What the reader should know of the storage before anything is put into it; empty if nothing. */
export async function warningAbout({ where, why }) {
  if (where === "page") {
    return `Nothing is kept on this device: ${why}. What you keep now is lost when this page is closed. Save it as a file before that.`;
  }
  const [promised, left] = await Promise.all([isPromised(), bytesLeft()]);
  if (left < SHORT) {
    return `This device has almost no space left for the log (${(left / 1e6).toFixed(1)} MB). Save the log as a file and free some space first.`;
  }
  return promised
    ? ""
    : "The browser may throw the log away: when space runs short, when its data are cleared, or, in a private window, as soon as the window is closed. Save it as a file at the end of the job.";
}

async function isPromised() {
  try {
    return await navigator.storage.persisted();
  } catch {
    return false;
  }
}

async function bytesLeft() {
  try {
    const { quota, usage } = await navigator.storage.estimate();
    return quota - usage;
  } catch {
    return Infinity;
  }
}

/** Why a change could not be written, in words. */
export function whyNotWritten(error) {
  return error?.name === "QuotaExceededError"
    ? "the storage of this device is full"
    : `the browser refused to write (${error?.name ?? "no reason given"})`;
}
