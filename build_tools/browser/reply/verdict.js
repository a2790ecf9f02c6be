import { say } from "../basics/element.js";
import { failureParts, helpsToTryAgain } from "../basics/failure-words.js";
import { aboutOf } from "./findings.js";
import { isPlan, toDoLine, verdictOf } from "../basics/outcomes.js";
import { verdictShape } from "../basics/verdict-shapes.js";

const LONG = "This is taking long. Wait, or try again: what you typed is kept.";

/** The bar that stays in view: the outcome in one word and a shape, and what decided it. */
export function showVerdict(root, reply) {
  const verdict = verdictOf(reply);
  if (verdict.outcome === "plan") {
    bar(root, verdict.outcome, verdict.word, reply.findings[0].says);
    offerReasons(root, "See it");
    return;
  }
  const deciding = reply.findings.filter((one) => one.outcome === reply.outcome && !isPlan(one));
  bar(root, verdict.outcome, verdict.word, [...toDoLine(verdict), ""].join(" ") + waiting(root) + decided(reply, deciding), verdict.soFar);
  offerReasons(root, "See why");
}

function offerReasons(root, words) {
  const button = root.querySelector("[data-why]");
  button.textContent = words;
  button.hidden = false;
}

// A line begun with a usual test and still empty is no part of the verdict, nor is what is still of
// the last device, and the bar says so.
function waiting(root) {
  const count = root.querySelectorAll("[data-untouched]").length;
  const empty = count ? `${count === 1 ? "One reading" : `${count} readings`} still empty. ` : "";
  return empty + ofLast(root);
}

function ofLast(root) {
  const count = root.querySelectorAll("[data-last]").length;
  return count ? `${count} of the last device not counted. ` : "";
}

function decided(reply, deciding) {
  if (reply.findings.length === 0) {
    return "Nothing was judged.";
  }
  if (reply.outcome === "pass") {
    const one = deciding.length === 1;
    return one ? "One finding, within its limits." : `${deciding.length} findings, all within their limits.`;
  }
  const [first, ...others] = deciding;
  const more = others.length ? ` And ${others.length} more below.` : "";
  return `${aboutOf(first, { begins: true })}: ${first.says}${more}`;
}

/** What keeps the checker from judging: fields still empty, or fields that read wrong. */
export function showUnfinished(root, { homeless, empty }, errors) {
  const wrong = Object.keys(errors).length - empty.length;
  if (wrong > 0) {
    const reason = homeless[0] ?? `${wrong === 1 ? "One field is" : `${wrong} fields are`} marked below.`;
    bar(root, "unfinished", "Not judged", reason);
  } else {
    bar(root, "unfinished", "Not judged yet", `${ofLast(root)}Still needed: ${[...new Set(empty)].join(", ")}.`);
  }
}

export function showCrash(root, { text, code }) {
  bar(root, "cannot-say", "Not judged", code ? `${text} Code: ${code}` : text);
}

export function showWorking(root) {
  bar(root, "waiting", "Working it out", "");
}

/** What the page waits for, and how far it is. */
export function showProgress(root, { stage, done, total, long }) {
  const fetching = stage === "fetching" && total > 0 && done < total;
  const step = fetching
    ? `Fetching the checkers: ${megabytes(done)} of ${megabytes(total)} MB.`
    : "Starting the checkers.";
  bar(root, "waiting", "Starting", `${step} ${long ? LONG : "Type meanwhile: nothing is lost."}`);
  if (long) {
    inFull(root, true);
  }
  const progress = root.querySelector("[data-progress]");
  progress.hidden = false;
  if (fetching) {
    progress.max = total;
    progress.value = done;
  } else {
    progress.removeAttribute("value");
  }
}

/** Why the checkers do not run here, whole, with a way to try again where that can help. */
export function showFailure(root, state) {
  bar(root, "unfinished", "Not running", "");
  root.querySelector("[data-detail]").replaceChildren(...failureParts(state));
  inFull(root, helpsToTryAgain(state));
}

/** That an answer is long in coming, with a way to start anew. */
export function showLong(root) {
  bar(root, "waiting", "Working it out", LONG);
  inFull(root, true);
}

/** Any other state, in its own words. */
export function showState(root, outcome, word, detail) {
  bar(root, outcome, word, detail);
}

/**
 * Keep the bar in what is seen, where a keyboard on the screen moves that down the page.
 *
 * Zoomed in by hand, the bar stays where it is: it would cover what is being read.
 */
export function keepInView(options) {
  const view = globalThis.visualViewport;
  const follow = () => {
    const from = Math.abs(view.scale - 1) < 0.05 ? view.offsetTop : 0;
    document.documentElement.style.setProperty("--seen-from", `${from}px`);
  };
  ["resize", "scroll"].forEach((kind) => view?.addEventListener(kind, follow, options));
}

function bar(root, outcome, word, detail, soFar = false) {
  const verdict = root.querySelector("[data-verdict]");
  if (verdict.dataset.outcome !== outcome || verdict.hasAttribute("data-so-far") !== soFar) {
    verdict.dataset.outcome = outcome;
    verdict.toggleAttribute("data-so-far", soFar);
    const shape = outcome === "waiting" ? [] : [verdictShape({ outcome, soFar })];
    verdict.querySelector("[data-shape]").replaceChildren(...shape);
  }
  verdict.toggleAttribute("data-short", true);
  say(verdict.querySelector("[data-word]"), word);
  say(verdict.querySelector("[data-detail]"), detail);
  verdict.querySelector("[data-progress]").hidden = true;
  verdict.querySelector("[data-retry]").hidden = true;
  verdict.querySelector("[data-why]").hidden = true;
}

// However many lines that takes: what to do about it stands last.
function inFull(root, canTryAgain) {
  const verdict = root.querySelector("[data-verdict]");
  verdict.toggleAttribute("data-short", false);
  verdict.querySelector("[data-retry]").hidden = !canTryAgain;
}

function megabytes(bytes) {
  return (bytes / 1e6).toFixed(1);
}
