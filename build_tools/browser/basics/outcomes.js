import { begun } from "./capital.js";
import { OUTCOMES, PASS } from "../generated/words.js";

const PLAN = "plan"; // in the place of an outcome for what only says what to do

const NO_ANSWER = ["crash", "damaged"]; // a checker failed, or the data of this copy is damaged

/** Whether a reply neither judges nor says what is wrong with the request. */
export function isNoAnswer({ kind }) {
  return NO_ANSWER.includes(kind);
}

/** Whether a finding tells what a plan holds: it judges nothing, and is no verdict. */
export function isPlan({ about }) {
  return about === "what the plan holds";
}

/** The outcome of a reply as it is shown: one that only tells what a plan holds is a plan. */
export function outcomeOf({ outcome, findings }) {
  return findings.length === 1 && isPlan(findings[0]) ? PLAN : outcome;
}

/** The outcome of a finding as it is shown. */
export function outcomeOfFinding(finding) {
  return isPlan(finding) ? PLAN : finding.outcome;
}

/** An outcome as it is shown, in words. */
export function wordOf(outcome) {
  return outcome === PLAN ? "Plan" : OUTCOMES[outcome];
}

/**
 * A reply's verdict as it is shown: its outcome, whether it is a pass only so far, the word for it,
 * the tests that the code still requires, and all of this in one text.
 */
export function verdictOf(reply) {
  const outcome = outcomeOf(reply);
  const missing = outcome === "pass" ? stillToDo(reply) : [];
  if (missing.length === 0) {
    return { outcome, soFar: false, word: wordOf(outcome), missing, words: wordOf(outcome) };
  }
  const word = soFarWord();
  return { outcome, soFar: true, word, missing, words: `${word}; ${PASS.still_to_do}: ${missing.join(", ")}` };
}

/** The attributes by which what shows a verdict takes its tone. */
export function toneOf({ outcome, soFar }) {
  return { "data-outcome": outcome, "data-so-far": soFar };
}

/** How a pass is called that leaves a required test open. */
export function soFarWord() {
  return begun(PASS.so_far);
}

// A reply kept before such tests were listed names the first of them as its next one.
function stillToDo({ still_to_do: listed, next_test: next, checker }) {
  if (listed) {
    return listed.map(({ words }) => words);
  }
  return checker === "readings" && next ? [next.test] : [];
}

/** What is still to do for a whole pass, as a sentence; none where nothing is. */
export function toDoLine({ missing }) {
  return missing.length ? [`${begun(PASS.still_to_do)}: ${missing.join(", ")}.`] : [];
}

/** A test that is still to do, with where it is required. */
export function toDoText({ words, code, clause }) {
  return `${begun(words)}: ${[code, clause].filter(Boolean).join(", ")}`;
}
