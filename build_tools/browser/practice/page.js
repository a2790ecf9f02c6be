import { fromFragment, toFragment } from "../basics/address.js";
import { ask, follow, forget, start } from "../client/client.js";
import { say } from "../basics/element.js";
import { showFarDay } from "../form/far-day.js";
import { read, showProblems, write } from "../form/form.js";
import { recall } from "../basics/memory.js";
import { isNoAnswer } from "../basics/outcomes.js";
import { newCase, requestOf } from "./case.js";
import { keepHalfDone, waitingCase, warning } from "./progress-store.js";
import { offerProgress } from "./progress.js";
import { showReadings } from "./readings.js";
import { offerSheet } from "./sheet.js";
import { offerSteps, showSteps } from "./steps.js";
import { offerSharing } from "../form/share-link.js";
import { showCrash, showFailure, showLong, showProgress, showState, showUnfinished } from "../reply/verdict.js";

const WHICH = ["level", "seed", "code", "on"];
const LAST = 999_999; // the greatest number of a case

/** Bring the page for practice to life; call what is returned when it goes. */
export function mount(root) {
  const stop = new AbortController();
  const part = (name) => root.querySelector(`[data-${name}]`);
  const page = { root, part, signal: stop.signal, form: part("inputs"), tooLong: false };
  page.all = (name) => [...root.querySelectorAll(`[data-${name}]`)];
  page.tables = JSON.parse(root.dataset.tables);
  page.show = () => show(page);
  page.go = (which) => go(page, which);
  page.next = () => next(page);
  say(part("warning"), warning());
  listen(page);
  [offerSteps, offerProgress, offerSheet].forEach((offer) => offer(page));
  offerSharing(page, { signal: page.signal });
  const unfollow = follow((state) => stateChanged(page, state));
  start();
  openFirst(page);
  return () => {
    stop.abort();
    unfollow();
    forget(page);
  };
}

function listen(page) {
  const on = (target, event, action) => target.addEventListener(event, action, { signal: page.signal });
  on(page.form, "change", () => open(page, ...parted(read(page.form))));
  on(page.form, "submit", (event) => event.preventDefault());
  on(page.part("next"), "click", () => next(page));
  on(globalThis, "hashchange", () => {
    const which = fromFragment(location.hash);
    which && toFragment(which) !== page.written && openFirst(page);
  });
}

// An address names a case; without one the learner goes on where it was left.
function openFirst(page) {
  const named = fromFragment(location.hash);
  const kept = { code: recall("last")?.code ?? "", seed: drawnNumber() };
  const { sheet, ...given } = named ?? {};
  const [which, strange] = parted({ code: kept.code, ...given });
  named ? open(page, which, strange) : open(page, waitingCase(null) ?? kept);
  if (sheet) {
    page.makeSheet(sheet);
  }
}

/** What was given, in two: what names a case, and what does not, which the checker refuses by name. */
function parted(given) {
  const names = ([name, value]) => WHICH.includes(name) && typeof value === "string";
  const parts = Object.entries(given);
  return [parts.filter(names), parts.filter((one) => !names(one))].map(Object.fromEntries);
}

/** Begin a case, or go on with it where it waits half done; `strange` is what else was given. */
function open(page, { level, seed, code, on }, strange = {}) {
  const { default: usual } = page.form.querySelector("[data-field=code]").dataset;
  const which = newCase({ level, seed, code: code || usual, on });
  page.practised = waitingCase(which) ?? which;
  const { level: shown, seed: number, code: whose, on: day } = page.practised;
  page.strange = strange;
  write(page.form, { level: shown, seed: number, code: whose, on: day, ...strange });
  show(page);
}

function next(page) {
  const { level, code } = page.practised;
  page.go({ level, code, seed: drawnNumber() });
}

// The button that leads to a case may go with the case before: keyboard and screen follow it.
function go(page, which) {
  page.arrives = true;
  open(page, which);
}

function drawnNumber() {
  return String(1 + Math.floor(Math.random() * LAST));
}

/** Ask what was shown so far, and lay it out. */
function show(page) {
  const { practised } = page;
  showFarDay(page.root, practised.on);
  ask(page, "practice", { ...requestOf(practised), ...page.strange }, (reply) => {
    page.reply = reply;
    page.all("case").forEach((one) => { one.hidden = reply.kind !== "result"; });
    if (reply.kind === "result") {
      showProblems(page.form, {});
      shown(page, practised, reply);
    } else if (isNoAnswer(reply)) {
      showCrash(page.root, reply);
    } else {
      showUnfinished(page.root, showProblems(page.form, reply.errors), reply.errors);
    }
  });
}

function shown(page, practised, { answer, on }) {
  const shows = answer.readings.map(({ done, shows: value }) => `${done}: ${value}`);
  if (practised.shown.some((one, at) => one !== shows[at])) {
    say(page.part("said"), "This build draws this case otherwise: it begins anew.");
    page.practised = newCase(practised);
    show(page);
    return;
  }
  const last = practised.actions.length > 0 && shows.length > practised.shown.length ? answer.readings.at(-1) : null;
  Object.assign(practised, { shown: shows, on: practised.on || on });
  keepHalfDone(practised);
  say(page.part("warning"), warning()); // the room may end while somebody practises
  showReadings(page, practised, answer);
  if (last) {
    showState(page.root, "unfinished", last.shows, last.done);
  } else {
    showState(page.root, "unfinished", `Level ${practised.level}, case ${practised.seed}`, answer.task);
  }
  showSteps(page);
  writeAddress(page);
  if (page.arrives) {
    page.arrives = false;
    page.part("scene").focus({ preventScroll: true });
    page.part("scene").scrollIntoView({ block: "center" });
  }
}

// The address holds the case alone, not what was done: whoever is sent it begins at the beginning.
function writeAddress(page) {
  const { level, seed, code, on } = page.practised;
  page.request = { level, seed, code };
  page.written = toFragment({ ...page.request, on });
  history.replaceState(history.state, "", `#${page.written}`);
}

function stateChanged(page, state) {
  if (state.stage === "failed") {
    showFailure(page.root, state);
  } else if (state.stage !== "ready") {
    showProgress(page.root, state);
  } else if (state.long) {
    showLong(page.root);
  }
}
