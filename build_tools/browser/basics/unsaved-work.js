import { ROOT } from "../shared/site-urls.js";

const KEY = `${ROOT.pathname} unsaved`;
const MOST = 1_000_000; // characters that the storage of a tab surely takes

const holders = new Set();
let arrival = performance.getEntriesByType("navigation")[0]?.type;
let isAsking = false;
let release = null;

/**
 * Whoever holds what stands neither in the address nor in this browser's stores says so here.
 *
 * It is written beside the tab as soon as it changes, and given back where the tab is loaded again or
 * comes back to the page. While something cannot be written so, no newer build takes over, and the
 * browser asks before the page is left.
 *
 * Inputs: `name` on its page; `words` for what it is; `state`, a function that gives it as JSON can
 * hold it, null where there is nothing, undefined where it cannot be written; the signal that its
 * page goes. Result: the state that the tab held, or null.
 */
export function holdUnsaved(holder, signal = null) {
  const held = { ...holder, key: `${KEY} ${location.pathname} ${holder.name}`, path: location.pathname, text: null, isSafe: true };
  const before = givenBack(held.key);
  holders.add(held);
  signal?.addEventListener("abort", () => { holders.delete(held); guard(); });
  return before;
}

/** Look at what is held now; gives what would be lost if this page were loaded again, in words. */
export function wouldBeLost() {
  holders.forEach(write);
  guard();
  return lostHere();
}

/** What any open page of this site holds that would be lost, in words. */
export async function wouldBeLostAnywhere() {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  const others = held.filter(({ name }) => name.startsWith(`${KEY}: `)).map(({ name }) => name.slice(KEY.length + 2));
  return [...new Set([...wouldBeLost(), ...others])];
}

/** A link has opened the page that follows: it begins as its address says. */
export function isOpenedAnew() {
  arrival = "navigate";
}

function lostHere() {
  return [...holders].filter(({ isSafe }) => !isSafe).map(({ words }) => words);
}

function write(held) {
  const state = held.state();
  if (location.pathname === held.path) {
    held.hash = location.hash; // the address of the page that follows may stand there before that page
  }
  const text = state ? JSON.stringify({ hash: held.hash, state }) : "";
  if (text !== held.text || state === undefined) {
    held.text = text;
    held.isSafe = store(held.key, text) && state !== undefined;
  }
}

function store(key, text) {
  try {
    sessionStorage.removeItem(key);
    text && text.length <= MOST && sessionStorage.setItem(key, text);
    return text.length <= MOST;
  } catch {
    return !text; // storage may be full or forbidden
  }
}

function givenBack(key) {
  try {
    const { hash, state } = JSON.parse(sessionStorage.getItem(key));
    return arrival === "reload" || (arrival === "back_forward" && hash === location.hash) ? state : null;
  } catch {
    return null;
  }
}

// A lock is seen by all pages of the site, also while its own page sleeps, and ends with it. A page
// that asks before it is left is kept out of the browser's memory of pages: so only while it has to.
function guard() {
  const [words] = lostHere();
  if (Boolean(words) !== isAsking) {
    isAsking = Boolean(words);
    (isAsking ? addEventListener : removeEventListener)("beforeunload", ask);
    release?.();
    release = null;
    if (isAsking) {
      const until = new Promise((done) => { release = done; });
      navigator.locks?.request(`${KEY}: ${words}`, { mode: "shared" }, () => until);
    }
  }
}

function ask(event) {
  event.preventDefault();
}

// At once, since a reload may follow, and again when whoever hears of it has done so.
for (const kind of ["input", "change", "click", "toggle"]) {
  document.addEventListener(kind, () => { wouldBeLost(); setTimeout(wouldBeLost); }, { capture: true });
}
addEventListener("pagehide", wouldBeLost);
addEventListener("popstate", () => { arrival = "back_forward"; });
