import { OUTCOMES } from "./words.js";

const PLAN = "plan"; // in the place of an outcome for what only says what to do

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
