import { isServed } from "./offline-copy.js";
import { failureOf, RIGHT_NOW } from "../shared/failure.js";
import { inWords } from "../basics/failure-words.js";
import { recall, remember } from "../basics/memory.js";
import { rehearse } from "./rehearsal.js";
import { hearReplies } from "../shared/reply-channel.js";
import { checkScripts } from "./script-check.js";
import { watchOver } from "./worker-watch.js";
import { whyNotMade, whyNotRun } from "./worker-trouble.js";
import { WORKER } from "./worker-url.js";

const QUIET = 1000; // milliseconds without a question after which the image is kept
const IMAGE = "start image"; // the length of the one that is kept [bytes]; the head's script reads it too

/**
 * The one worker of this page, and what it is doing.
 *
 * It outlives the page's text: navigation inside the site keeps it. `stage` is idle,
 * fetching, starting, ready or failed; `done` and `total` are bytes while it is fetching; `long`
 * tells that it has been silent for long; `failure` why it failed, and `ran` whether it had been ready;
 * `answered` tells that some question was.
 */
const state = { stage: "idle", done: 0, total: 0, long: false, failure: null, ran: false, answered: false };
const listeners = new Set();
const calls = new Map(); // by number: how to give a call of the schedule its reply
const asked = new Map(); // by who asks: the number in flight, and the newest request behind it

let worker = null;
let isKept = false; // whether the worker's scripts come from the copy
let takenImage = false; // whether the worker holds an image that is not kept yet
let quiet = 0;
let stopHearing = () => {};
let lastNumber = 0;
let isOnceMore = false; // whether a start has been tried once more by itself
let knowsModules = true; // whether this browser looks at the kind of worker that it is asked for

const watch = watchOver({
  waits: () => state.stage === "ready" ? calls.size > 0 || isAsked() : worker !== null,
  ask: () => worker.postMessage({ ping: true }),
  long: () => change({ long: true }),
  ended: () => fail({ kind: "ended", file: "", detail: "" }),
});

/** Hear of every change of state, at once and from now on; call what is returned to stop. */
export function follow(listener) {
  listeners.add(listener);
  listener(state);
  return () => listeners.delete(listener);
}

/**
 * Start the worker unless it is started; `fresh` fetches everything anew.
 *
 * A page with a checker began it in its head, ahead of all scripts: then this takes it over.
 */
export function start({ fresh = false } = {}) {
  if (state.stage !== "idle" && state.stage !== "failed") {
    return;
  }
  change({ stage: "fetching", done: 0, total: 0, failure: null, ran: false });
  isKept = isServed();
  const begun = globalThis.begunWorker;
  globalThis.begunWorker = null;
  begun ? takeOver(begun) : startWorker({ fresh, image: fresh ? 0 : recall(IMAGE) });
}

/**
 * Start anew, whether it failed or is silent, with every file fetched anew.
 *
 * What was asked of a checker is asked again; a call of the schedule is rejected.
 */
export function tryAgain() {
  isOnceMore = false;
  stop("it was started anew");
  change({ stage: "idle", long: false });
  start({ fresh: true });
}

function startWorker(how) {
  worker?.terminate();
  const slug = document.querySelector("[data-checker]")?.dataset.checker;
  const name = JSON.stringify({ slug, ...how });
  const past = how?.fresh ? `?anew=${Date.now()}` : ""; // the copy and the caches are passed by
  knowsModules = false;
  const kind = { name, get type() { knowsModules = true; return "module"; } };
  try {
    worker = new Worker(new URL(`${WORKER}${past}`), kind);
  } catch (error) {
    fail(whyNotMade(error));
    return;
  }
  listen(worker, failedToStart);
}

// Its failure may have been chance, and what it says is not what the next one says.
function takeOver({ worker: begun, heard }) {
  worker = begun;
  listen(begun, (event) => (state.stage === "ready" ? failedToStart(event) : startWorker({ fresh: true })));
  heard.forEach((event) => (event.type === "error" ? begun.onerror(event) : begun.onmessage(event)));
}

function listen(made, failed) {
  made.onmessage = ({ data }) => made === worker && hear(data);
  made.onerror = (event) => made === worker && failed(event);
  watch.begin();
}

async function failedToStart({ message }) {
  const failed = worker;
  const failure = await whyNotRun(message ?? "", WORKER, knowsModules);
  if (failed === worker) {
    fail(failure);
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

/**
 * Call the schedule, which keeps what it has read between calls; each call gets its own reply.
 *
 * Inputs: begin, feed, go_on or finish; the request as JSON text, or bytes of the file.
 * Rejects where the checkers cannot run, or stop running meanwhile.
 */
export async function callSchedule(call, value) {
  await running();
  clearTimeout(quiet);
  lastNumber += 1;
  const number = lastNumber;
  return new Promise((resolve, reject) => {
    calls.set(number, { resolve, reject });
    worker.postMessage({ number, call, value });
    watch.begin();
  });
}

function running() {
  return new Promise((resolve, reject) => {
    const wait = ({ stage }) => {
      if (stage === "ready" || stage === "failed") {
        listeners.delete(wait);
        stage === "ready" ? resolve() : reject(new Error(inWords(state)));
      }
    };
    listeners.add(wait);
    wait(state);
  });
}

/** Forget who asked, as when its form has gone. */
export function forget(who) {
  asked.delete(who);
}

function send(mine) {
  if (state.stage !== "ready" || !mine.next) {
    return;
  }
  clearTimeout(quiet);
  lastNumber += 1;
  Object.assign(mine, { number: lastNumber, current: mine.next, next: null });
  worker.postMessage({ number: mine.number, slug: mine.current.slug, request: mine.current.request });
  watch.begin();
}

function isAsked() {
  return [...asked.values()].some(({ number }) => number > 0);
}

function hear(data) {
  watch.heard(data);
  if (data.alive) {
    return;
  }
  if (state.long) {
    change({ long: false });
  }
  if (data.failed) {
    failOnce(data.failed);
  } else if (data.refused) {
    remember(IMAGE, 0);
    startWorker();
  } else if (data.kept) {
    remember(IMAGE, data.kept);
    rehearse(data.kept, () => remember(IMAGE, 0));
  } else if (data.fetching) {
    change(data.fetching);
  } else if (data.starting) {
    change({ stage: "starting" });
    isKept || checkScripts().catch(() => {}); // told of when it is ready
  } else if (data.ready) {
    whenCompared(data);
  } else if (calls.has(data.number)) {
    calls.get(data.number).resolve(JSON.parse(data.reply));
    calls.delete(data.number);
  } else {
    deliver([...asked.values()].find(({ number }) => number === data.number), data.reply);
  }
}

// Nothing is asked of scripts that are not those of this build. Those of the copy were compared
// when they were kept.
async function whenCompared({ taken, channel }) {
  const mine = worker;
  try {
    await (isKept || checkScripts());
  } catch (error) {
    worker === mine && failOnce(failureOf(error));
    return;
  }
  if (worker === mine) {
    takenImage = taken;
    stopHearing = hearReplies(channel, hear);
    change({ stage: "ready" });
    asked.forEach(send);
  }
}

function keepWhenQuiet() {
  clearTimeout(quiet);
  quiet = setTimeout(() => {
    worker?.postMessage({ keep: true });
    takenImage = false;
  }, QUIET);
}

function deliver(mine, reply) {
  if (takenImage) {
    keepWhenQuiet();
  }
  if (!mine) {
    return;
  }
  mine.number = 0;
  if (mine.next) {
    send(mine); // what was asked has changed since: its answer is stale
  } else {
    mine.current.reply(JSON.parse(reply));
    if (!state.answered) {
      change({ answered: true });
    }
  }
}

// What was damaged, in the copy or on its way, and came right when it was looked at: one start more.
function failOnce(failure) {
  if (failure.detail === RIGHT_NOW && !isOnceMore) {
    isOnceMore = true;
    stop("it was started anew");
    change({ stage: "idle" });
    start({ fresh: true });
  } else {
    fail(failure);
  }
}

function fail(failure) {
  const ran = state.stage === "ready";
  const words = inWords({ failure, ran });
  stop(words);
  console.warn(words);
  change({ stage: "failed", failure, ran, long: false });
}

function stop(why) {
  worker?.terminate();
  worker = null;
  stopHearing();
  for (const mine of asked.values()) {
    mine.next ??= mine.current;
    mine.number = 0;
  }
  calls.forEach(({ reject }) => reject(new Error(why)));
  calls.clear();
}

function change(changes) {
  Object.assign(state, changes);
  listeners.forEach((listener) => listener(state));
}
