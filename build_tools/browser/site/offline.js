import { buildName } from "../basics/days.js";
import { element, say } from "../basics/element.js";
import { follow, start } from "../client/client.js";
import { mendCopy } from "../client/offline-copy.js";
import { whyLacking, whyNotKept } from "./copy-trouble.js";
import { recall, remember } from "../basics/memory.js";
import { notice } from "../basics/notice.js";
import { correctsMore, learnOf, showOutdated } from "./newer-build.js";
import { ROOT } from "../shared/site-urls.js";
import { reached } from "../shared/refusable.js";
import { wouldBeLost, wouldBeLostAnywhere } from "../basics/unsaved-work.js";

const LONG = 90; // days without a look at the site after which a copy says so
const DAY = 24 * 60 * 60 * 1000;

/** What is known of the copy on this device, shown wherever the page has a place for it. */
const copy = { text: "", build: null };

let registration = null;
let abandoned = false;
let lacking = null; // why a copy could not be finished, as facts
let replacing = false;
let mended = false; // a start is tried again by itself once

/** Keep a copy of the site on this device once nothing more urgent is being fetched. */
export function keepOfflineCopy() {
  if (!reached(() => navigator.serviceWorker)) {
    tell(`No offline copy: ${whyNone()}`);
    return;
  }
  navigator.serviceWorker.addEventListener("message", ({ data }) => heard(data));
  reloadWhenReplaced();
  whenIdle(register);
  follow(({ stage }) => stage === "failed" && setAside());
}

function whyNone() {
  if (!isSecureContext) {
    return "this address is not secure (https).";
  }
  return "serviceWorker" in navigator
    ? "this browser is set to keep nothing for this site."
    : "this browser, or this kind of window, cannot keep one.";
}

/** Write the state into the page in view. */
export function showOfflineState() {
  for (const place of document.querySelectorAll("[data-offline]")) {
    say(place, copy.text);
  }
  showOutdated();
}

function tell(text) {
  copy.text = text;
  showOfflineState();
}

// The runtime comes first: the copy is fetched when the checkers run, or cannot, or are not here.
function whenIdle(action) {
  const hasChecker = document.querySelector("[data-checker]");
  if (!hasChecker) {
    setTimeout(action, 500);
    return;
  }
  const stop = follow(({ stage }) => {
    if (stage === "ready" || stage === "failed") {
      setTimeout(() => { stop(); action(); }, 0);
    }
  });
}

async function register() {
  const script = new URL("service-worker.js", ROOT);
  try {
    registration = await navigator.serviceWorker.register(script, { scope: ROOT.pathname, updateViaCache: "none" });
  } catch {
    tell(navigator.onLine ? `No offline copy could be kept on this device: ${await whyNotKept(script)}` : copy.text);
    return;
  }
  registration.addEventListener("updatefound", () => watch(registration.installing));
  watch(registration.installing);
  offerWaiting();
  await lookForUpdate();
  await askState();
}

async function lookForUpdate() {
  try {
    await registration.update();
    remember("looked", Date.now());
  } catch {
    // No network: the copy serves, and says below how old it is.
  }
}

function watch(installing) {
  installing?.addEventListener("statechange", () => {
    if (installing.state === "installed") {
      offerWaiting();
    } else if (installing.state === "activated") {
      askState();
    } else if (installing.state === "redundant" && !registration.active) {
      abandoned = true;
      tellUnfinished();
    }
  });
}

function askState() {
  registration.active?.postMessage({ ask: "state" });
}

function tellUnfinished() {
  if (abandoned) {
    tell(`The offline copy could not be finished: ${lacking ? whyLacking(lacking) : "it is tried again whenever this site is opened."}`);
  } else if (lacking && copy.build?.whole && lacking.build !== copy.build.build) {
    tell(`${worksOffline(copy.build)} A newer build could not be fetched: ${whyLacking(lacking)}`);
  }
}

function heard({ filling, newer, state, unfinished, waiting }) {
  if (newer ?? waiting) {
    learnOf(newer ?? waiting);
  }
  if (filling && !registration?.active && !abandoned) {
    tell(`Keeping a copy for offline use: ${filling.done} of ${filling.total} files.`);
  }
  if (waiting) {
    showNotice(waiting);
  }
  if (unfinished) {
    lacking = unfinished;
    tellUnfinished();
  }
  if (state) {
    copy.build = state;
    tell(state.whole ? worksOffline(state) : `The offline copy is not whole: ${whyLacking(state.why)}`);
    announceNewBuild(state);
    tellUnfinished();
  }
}

function worksOffline({ build }) {
  return `Works offline. Copy built on ${buildName(build)}.${age()}`;
}

// What could not start may lie in the copy: it is compared with its hashes, and if it was wrong the
// checkers are started once more.
async function setAside() {
  if (mended) {
    return;
  }
  const found = await mendCopy();
  if (found.mended > 0) {
    mended = true;
    start();
  }
  if (found.mended > 0 || found.why) {
    askState();
  }
}

// A copy has types of its own, where those of the host kept the checkers from starting.
function startFromCopy() {
  follow(({ stage }) => {
    if (stage === "failed" && !mended) {
      mended = true;
      setTimeout(start);
    }
  })();
}

function age() {
  const looked = recall("looked");
  const days = looked ? Math.floor((Date.now() - looked) / DAY) : 0;
  return days > LONG
    ? ` It has not been compared with the site for ${days} days: limits may have changed. Connect and open it again.`
    : "";
}

// Browsers also bring a waiting build in when the last page of the old one is closed.
function announceNewBuild(state) {
  const seen = recall("build");
  if (seen && seen !== state.build) {
    notice(`This is now the build of ${buildName(state.build)}.`);
  }
  remember("build", state.build);
}

function offerWaiting() {
  if (registration.waiting && registration.active) {
    registration.waiting.postMessage({ ask: "waiting" });
  }
}

function showNotice(waiting) {
  const apply = element("button", { type: "button", class: "action" }, "Use it now");
  apply.addEventListener("click", () => takeOver(waiting, apply));
  const corrects = correctsMore(waiting) ? " It corrects verdicts." : "";
  notice(`A newer build of this site, of ${buildName(waiting.build)}, is on this device.${corrects} It comes into use with “Use it now”, or once all pages of this site are closed. Open pages are then loaded again, with what is typed in them.`, apply);
}

// Whatever a page holds that it could not bring back holds up the newer build, which can wait.
async function takeOver(waiting, apply) {
  const held = await wouldBeLostAnywhere();
  if (held.length === 0) {
    registration.waiting?.postMessage({ ask: "take over" });
    return;
  }
  notice(`The newer build, ${buildName(waiting.build)}, waits: an open page of this site holds ${held.join(", and ")}, which loading it again would lose. Save that, or close its page, and use the newer build then.`, apply);
}

function reloadWhenReplaced() {
  const { serviceWorker } = navigator;
  let had = Boolean(serviceWorker.controller);
  serviceWorker.addEventListener("controllerchange", () => {
    if (had && !replacing) {
      replaced();
    }
    had || startFromCopy();
    had = true;
  });
}

// What was typed since the newer build was chosen counts too: then this page stays as it is.
function replaced() {
  const held = wouldBeLost();
  if (held.length > 0) {
    const again = element("button", { type: "button", class: "action" }, "Load it again now");
    again.addEventListener("click", () => location.reload());
    notice(`A newer build of this site is in use. This page is still of the build before, since it holds ${held.join(", and ")}. Save that, then load it again.`, again);
    return;
  }
  replacing = true;
  location.reload();
}
