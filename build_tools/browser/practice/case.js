/** One case in practice: a device by its level and number, and what the learner did with it. */

export const STEP_NAMES = { limits: "Limits", cause: "Cause", action: "What to do" };
export const STEPS = Object.keys(STEP_NAMES);
const UNKNOWN = "do-not-know";
export const WENT = { right: "right at once", later: "right in the end", told: "told" };

/** A case at its beginning: `which` holds level, seed, code and, where it is given, the day. */
export function newCase({ level = "1", seed = "1", code = "", on = "" }) {
  return { level: String(level), seed: String(seed), code, on, actions: [], tries: [], hints: [], shown: [] };
}

/** Whether two cases have the same device; a case that names no day is any day's. */
export function isSame(one, other) {
  const day = !one.on || !other.on || one.on === other.on;
  return day && ["level", "seed", "code"].every((name) => one[name] === other[name]);
}

/** What the checker is asked about a case, with what else is asked. */
export function requestOf(practised, also = {}) {
  const { level, seed, code, on, actions } = practised;
  const given = Object.fromEntries(Object.entries({ level, seed, code, on }).filter(([, value]) => value));
  return { ...given, actions: actions.map((key) => ({ do: key })), ...also };
}

/** The answer by which a step was settled, or nothing while it is open. */
export function settledBy({ tries }, step) {
  return tries.find((one) => one.step === step && (one.mark.outcome === "pass" || one.answer === UNKNOWN));
}

/** How a step went: right at once, right later, or told; empty while it is open. */
export function howItWent(practised, step) {
  const settled = settledBy(practised, step);
  if (!settled) {
    return "";
  }
  if (settled.answer === UNKNOWN) {
    return "told";
  }
  return wrongIn(practised, step) === 0 ? "right" : "later";
}

/** How many wrong answers a step took. */
export function wrongIn({ tries }, step) {
  return tries.filter((one) => one.step === step && one.answer !== UNKNOWN && one.mark.outcome !== "pass").length;
}

/** The decision that the settled answers make, for the marks at the end. */
export function decisionOf(practised) {
  const settled = STEPS.map((step) => [step, settledBy(practised, step)]).filter(([, one]) => one);
  return Object.fromEntries(settled.map(([step, one]) => [step, one.answer]));
}

/** Whether the learner did anything yet. */
export function isTouched({ actions, tries, hints }) {
  return actions.length + tries.length + hints.length > 0;
}

/** What is kept of a case once it has ended; `asked` are the steps of its level. */
export function resultOf(practised, asked) {
  const { level, seed, code, on } = practised;
  return {
    level, seed, code, on,
    ended: new Date().toISOString(),
    steps: Object.fromEntries(asked.map((step) => [step, howItWent(practised, step)])),
    wrong: Object.fromEntries(asked.map((step) => [step, wrongIn(practised, step)])),
    hints: practised.hints.length,
    done: practised.shown.length,
  };
}
