import { fetchRuntime } from "./runtime-files.js";
import { RUNTIME_FOLDER } from "./places.js";

/**
 * The one worker of this page, and what it is doing.
 *
 * It outlives the page's text: navigation inside the site keeps it. `stage` is idle,
 * fetching, starting, ready or failed; `done` and `total` are bytes while it is fetching.
 */
const state = { stage: "idle", done: 0, total: 0, why: "" };
const listeners = new Set();
const asked = new Map(); // by who asks: the number in flight, and the newest request behind it

let worker = null;
let lastNumber = 0;

/** Hear of every change of state, at once and from now on; call what is returned to stop. */
export function follow(listener) {
  listeners.add(listener);
  listener(state);
  return () => listeners.delete(listener);
}

/** Start the worker unless it is started; `fresh` fetches everything anew. */
export async function start({ fresh = false } = {}) {
  if (state.stage !== "idle" && state.stage !== "failed") {
    return;
  }
  change({ stage: "fetching", done: 0, total: 0, why: "" });
  try {
    worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }) => hear(data));
    worker.addEventListener("error", (event) => fail(event.message || "the worker did not start"));
    const parts = await fetchRuntime((done, total) => change({ done, total }), { fresh });
    change({ stage: "starting" });
    worker.postMessage({ start: { ...parts, folder: RUNTIME_FOLDER.href } });
  } catch (error) {
    fail(String(error));
  }
}

/**
 * Ask a checker; `reply` is called with the answer to the newest request alone.
 *
 * Inputs: who asks (anything that stays the same), the checker's slug, the request.
 */
export function ask(who, slug, request, reply) {
  const mine = asked.get(who) ?? { number: 0, next: null };
  mine.next = { slug, request: JSON.stringify(request), reply };
  asked.set(who, mine);
  if (mine.number === 0) {
    send(mine);
  }
}

/** Forget who asked, as when its form has gone. */
export function forget(who) {
  asked.delete(who);
}

function send(mine) {
  if (state.stage !== "ready" || !mine.next) {
    return;
  }
  lastNumber += 1;
  Object.assign(mine, { number: lastNumber, current: mine.next, next: null });
  worker.postMessage({ number: mine.number, slug: mine.current.slug, request: mine.current.request });
}

function hear(data) {
  if (data.failed) {
    fail(data.failed);
  } else if (data.ready) {
    change({ stage: "ready" });
    asked.forEach(send);
  } else {
    deliver([...asked.values()].find(({ number }) => number === data.number), data.reply);
  }
}

function deliver(mine, reply) {
  if (!mine) {
    return;
  }
  mine.number = 0;
  if (mine.next) {
    send(mine); // what was asked has changed since: its answer is stale
  } else {
    mine.current.reply(JSON.parse(reply));
  }
}

function fail(why) {
  worker?.terminate();
  worker = null;
  for (const mine of asked.values()) {
    mine.next ??= mine.current;
    mine.number = 0;
  }
  console.warn(`The checkers could not start: ${why}`);
  change({ stage: "failed", why });
}

function change(changes) {
  Object.assign(state, changes);
  listeners.forEach((listener) => listener(state));
}
