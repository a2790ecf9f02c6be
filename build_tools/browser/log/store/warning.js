import { element } from "../../basics/element.js";

const SHORT = 2_000_000; // bytes left below which the reader is told
const FRAMED = "This page is shown inside a page of another site. ";
const APART = "What you keep here stays with that page, apart from the job log of this site. ";
const NOT_PROMISED = "The browser may throw the log away: when space runs short, when its data are cleared, or, in a private window, as soon as the window is closed. ";
const SEVEN_DAYS = "Safari may also do so after seven days of use without a visit here, unless this site is on the home screen: choose Share, then Add to Home Screen. ";
const SAVE = "Save it as a file at the end of the job.";

/** Show what the reader should know of the storage before anything is put into it, if anything. */
export async function showWarning(place, log) {
  const parts = await warningAbout(log);
  const shown = element("p", {}, ...parts).textContent;
  if (place.textContent !== shown) {
    place.replaceChildren(...parts); // the same is not announced twice
  }
}

async function warningAbout({ where, why }) {
  if (where === "page") {
    return [...framed(""), `Nothing is kept on this device: ${why}. What you keep now is lost when this page is closed. Save it as a file before that.`];
  }
  const [isPromised, left] = await Promise.all([promised(), bytesLeft()]);
  if (left < SHORT) {
    return [...framed(APART), `This device has almost no space left for the log (${(left / 1e6).toFixed(1)} MB). Save the log as a file and free some space first.`];
  }
  return [...framed(APART), ...(isPromised ? [] : [NOT_PROMISED, isSafari() ? SEVEN_DAYS : "", SAVE])];
}

function framed(whatFollows) {
  if (!isFramed()) {
    return [];
  }
  const link = element("a", { class: "action", href: location.href, target: "_blank", rel: "noopener" }, "Open it by itself");
  link.addEventListener("click", () => { link.href = location.href; }); // the case in it has changed
  return [FRAMED, whatFollows, link, " "];
}

// A browser gives a site inside another one storage of its own there.
function isFramed() {
  try {
    return globalThis.top.location.origin !== location.origin;
  } catch {
    return true;
  }
}

// By the standard `vendor` names the engine, whatever the browser calls itself.
function isSafari() {
  return navigator.vendor.startsWith("Apple");
}

async function promised() {
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
