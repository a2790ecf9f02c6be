import { element, say } from "../basics/element.js";
import { handOver } from "../basics/download.js";
import { STEP_NAMES, STEPS, WENT } from "./case.js";
import { clearProgress, progress, progressFile } from "./progress-store.js";

/** Show what this device keeps, and let the learner take it along or clear it. */
export function offerProgress(page) {
  const on = (target, event, action) => target.addEventListener(event, action, { signal: page.signal });
  on(page.part("save"), "click", () => {
    const file = progressFile();
    handOver(file);
    say(page.part("told"), `Handed to this browser as ${file.name}.`);
  });
  on(page.part("forget"), "click", () => askFirst(page));
  on(globalThis, "storage", () => showKept(page)); // another tab may have written
  showKept(page);
}

function askFirst(page) {
  const button = (words, action) => {
    const made = element("button", { type: "button", class: "action" }, words);
    made.addEventListener("click", () => { page.part("told").replaceChildren(); action(); page.part("forget").focus(); });
    return made;
  };
  const sure = button("Yes, clear it all", () => {
    const isGone = clearProgress();
    showKept(page);
    say(page.part("told"), isGone ? "Cleared." : "Cleared on this page alone: this browser refuses to write, so the device still holds it.");
  });
  page.part("told").replaceChildren("All cases, ended and half done, will be gone. ", sure, " ", button("Leave it", () => {}));
  sure.focus();
}

/** Lay out the cases that ended, by level and step, and those that wait. */
export function showKept(page) {
  const { ended, halfDone } = progress();
  const levels = [...new Set(ended.map(({ level }) => level))].sort();
  const parts = levels.map((level) => levelItem(level, ended.filter((one) => one.level === level)));
  page.part("kept").replaceChildren(
    parts.length ? element("ul", {}, ...parts) : element("p", {}, "No case has ended yet."),
    ...waiting(page, halfDone),
  );
}

function levelItem(level, cases) {
  const steps = STEPS.filter((step) => cases.some(({ steps: went }) => went[step]));
  const hints = cases.reduce((sum, one) => sum + one.hints, 0);
  return element(
    "li",
    {},
    element("strong", {}, `Level ${level}: ${cases.length} ${cases.length === 1 ? "case" : "cases"}`),
    element("ul", {}, ...steps.map((step) => element("li", {}, stepWords(step, cases))), element("li", {}, `Hints: ${hints}`)),
  );
}

function stepWords(step, cases) {
  const counts = Object.entries(WENT)
    .map(([went, words]) => [cases.filter((one) => one.steps[step] === went).length, words])
    .filter(([count]) => count > 0)
    .map(([count, words]) => `${count} ${words}`);
  const wrong = cases.reduce((sum, one) => sum + (one.wrong[step] ?? 0), 0);
  return `${STEP_NAMES[step]}: ${counts.join(", ")}; wrong answers: ${wrong}`;
}

function waiting(page, halfDone) {
  if (halfDone.length === 0) {
    return [];
  }
  const items = halfDone.map((one) => {
    const button = element("button", { type: "button", class: "action" }, `Go on with level ${one.level}, case ${one.seed}`);
    button.addEventListener("click", () => page.go(one));
    return element("li", {}, button);
  });
  return [element("h3", {}, "Half done"), element("ul", { class: "practice__waiting" }, ...items)];
}
