import { isSame, isTouched } from "./case.js";
import { recall, remember } from "../basics/memory.js";
import { holdUnsaved, wouldBeLost } from "../basics/unsaved-work.js";

const NAME = "practice";
const VERSION = 1;
const HALF_DONE = 12; // cases that wait; the oldest gives way

const empty = () => ({ version: VERSION, ended: [], halfDone: [] });
let held = null; // what this page keeps itself, where the browser keeps nothing

const isSome = () => held && held.ended.length + held.halfDone.length > 0;
holdUnsaved({ name: "practice", words: "progress that this browser does not keep", state: () => (isSome() ? undefined : null) });

/** What this device keeps of the learner's practice: cases that ended, and cases half done. */
export function progress() {
  const kept = recall(NAME);
  const isWhole = kept?.version === VERSION && Array.isArray(kept.ended) && Array.isArray(kept.halfDone);
  return held ?? (isWhole ? kept : empty());
}

/** What the learner should know of the storage; empty if nothing. Tries to write. */
export function warning() {
  if (recall(NAME)?.version > VERSION) {
    return "The progress on this device was written by a newer build of this site, and stays as it is. What you do now is lost when this page is closed.";
  }
  return write(progress())
    ? ""
    : "This browser keeps nothing for this site, as in some private windows or where storage is blocked: your progress is lost when this page is closed. Save it as a file before that.";
}

/** Keep a case as it stands; one in which nothing was done yet is not kept. */
export function keepHalfDone(practised) {
  const { ended, halfDone } = progress();
  const others = halfDone.filter((one) => !isSame(one, practised));
  write({ version: VERSION, ended, halfDone: isTouched(practised) ? [practised, ...others].slice(0, HALF_DONE) : others });
}

/** Keep how a case ended, unless it has ended before; it waits no longer. */
export function keepEnded(result) {
  const { ended, halfDone } = progress();
  const before = ended.some((one) => isSame(one, { ...result, on: "" }));
  write({
    version: VERSION,
    ended: before ? ended : [...ended, result],
    halfDone: halfDone.filter((one) => !isSame(one, result)),
  });
}

/** The half-done case that a learner comes back to: the one asked for, or else the newest. */
export function waitingCase(which) {
  const { halfDone } = progress();
  return which ? halfDone.find((one) => isSame(one, which)) : halfDone[0];
}

/** Forget all of it; false where it is on the device still. */
export function clearProgress() {
  return write(empty()) || recall(NAME) === null;
}

/** The progress as a file that anybody can read. */
export function progressFile() {
  const name = `practice-${new Date().toISOString().slice(0, 10)}.json`;
  const text = JSON.stringify({ format: "practice progress", ...progress() }, null, 1);
  return { name, type: "application/json", text };
}

function write(value) {
  const isNewer = recall(NAME)?.version > VERSION;
  const isKept = !isNewer && remember(NAME, value);
  held = isKept ? null : value;
  wouldBeLost();
  return isKept;
}
