import { answerTo } from "../../client/ask-once.js";
import { aboutOf } from "../../reply/findings.js";
import { openStandings } from "./store.js";
import { checkersHash, currentBuild } from "../entry/entry.js";
import { openLog } from "../store/store.js";
import { outcomeOf, verdictOf } from "../../basics/outcomes.js";

const AT_ONCE = 25; // verdicts between two notes of how far it is

let last = Promise.resolve();
let store = null;

/**
 * Judge every kept verdict again that these checkers have not judged yet, each for its own day and
 * code, one at a time, so that whatever a reader asks meanwhile comes in between.
 *
 * Inputs: whom to tell how far it is, {done, total}. Result: what is `known` of each, by id, and the
 * error that left some of that `unwritten`; then it is found anew the next time. The kept verdicts
 * themselves stay as they are. Rejects where the checkers cannot start, or the log cannot be read.
 */
export function judgeKept(tell = () => {}) {
  const run = last.then(() => judgeAll(tell));
  last = run.catch(() => {});
  return run;
}

/** Note that the reader has seen what no longer stands. */
export async function noteSeen(standings) {
  await (await standingsStore()).put(standings.map((one) => ({ ...one, seen: true })));
}

/** Whether a verdict no longer stands. */
export function isLost(standing) {
  return Boolean(standing) && standing.is !== "stands";
}

function standingsStore() {
  store ??= openStandings();
  return store;
}

async function judgeAll(tell) {
  const [kept, build] = [await standingsStore(), await currentBuild()];
  const entries = await (await openLog()).entries();
  const known = new Map((await kept.all()).map((one) => [one.id, one]));
  let unwritten = await forgetGone(kept, known, entries).then(() => null, (error) => error);
  const by = checkersHash();
  const left = entries.filter((entry) => known.get(entry.id)?.by !== by && isOlder(entry.build, build));
  const total = left.length;
  while (left.length > 0) {
    tell({ done: total - left.length, total });
    const made = [];
    for (const entry of left.splice(0, AT_ONCE)) {
      made.push(await judgedAgain(entry, by, known.get(entry.id)));
    }
    await kept.put(made).catch((error) => { unwritten = error; });
    made.forEach((one) => known.set(one.id, one));
  }
  return { known, unwritten };
}

async function forgetGone(kept, known, entries) {
  const here = new Set(entries.map(({ id }) => id));
  const gone = [...known.keys()].filter((id) => !here.has(id));
  await kept.drop(gone);
  gone.forEach((id) => known.delete(id));
}

// What this build judged needs no second look; a build of a later day may know better than this one.
function isOlder(theirs, ours) {
  const [their, our] = [theirs, ours].map((build) => /^\d{4}-\d\d-\d\d/.exec(build)?.[0] ?? "");
  return theirs !== ours && !(our && their > our);
}

async function judgedAgain(entry, by, before) {
  const { id, checker, request, reply: kept } = entry;
  const reply = await answerTo(checker, { code: kept.code, on: kept.on, ...request });
  const found = { id, by, ...standingOf(kept, reply) };
  const seen = before?.seen && before.now === found.now && before.why === found.why;
  return seen ? { ...found, seen } : found;
}

function standingOf(kept, reply) {
  if (reply.kind !== "result") {
    const errors = Object.entries(reply.errors ?? {}).map(([field, problem]) => `${field}: ${problem}`);
    return { is: "refused", now: "", why: errors.join("; ") || reply.text };
  }
  const { outcome: now, soFar, word } = verdictOf(reply);
  if (outcomeOf(kept) === now) {
    return { is: "stands" };
  }
  return { is: "changed", now, soFar, word, why: reasonOf(kept, reply) };
}

function reasonOf(kept, reply) {
  const deciding = decisive(reply);
  return reply.outcome === "pass" ? `No longer said: ${decisive(kept)}` : deciding;
}

function decisive({ outcome, findings }) {
  const finding = findings.find((one) => one.outcome === outcome);
  return finding ? `${aboutOf(finding, { begins: true })}: ${finding.says}` : "Nothing is judged.";
}
