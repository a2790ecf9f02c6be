import { ask, follow, forget } from "../client/client.js";
import { addEntry, addNext, removeEntry } from "../form/entries.js";
import { showFarDay } from "../form/far-day.js";
import { keepOneAnswer, showUnits } from "../form/fields.js";
import { known, partAt, read, readyForPaper, showProblems, write } from "../form/form.js";
import { fromFragment, toFragment } from "../basics/address.js";
import { addressRead, keepInAddress, writeAddress, writeAtOnce } from "./case-address.js";
import { showInWords } from "../form/entry-summary.js";
import { offerKeeping } from "../log/keep/panel.js";
import { watchDevice, watchNoDevice } from "./last-device.js";
import { recall, remember } from "../basics/memory.js";
import { isNoAnswer } from "../basics/outcomes.js";
import { showResults } from "../reply/results.js";
import { offerSharing } from "../form/share-link.js";
import { typedBefore } from "./tab-case.js";
import { offerUndo } from "../form/undo.js";
import { holdUnsaved } from "../basics/unsaved-work.js";
import { keepInView, showCrash, showFailure, showLong, showProgress, showUnfinished, showVerdict, showWorking } from "../reply/verdict.js";

const WORKING_AFTER = 150; // milliseconds after which an old verdict must not stand any longer

/** Bring one checker of the page to life; call what is returned when its page goes. */
export function mount(root) {
  const checker = { root, form: root.querySelector("[data-inputs]"), slug: root.dataset.checker };
  checker.own = "ownAddress" in root.dataset;
  checker.judge = () => judgeTyped(checker);
  const stop = new AbortController();
  const options = { signal: stop.signal };
  checker.device = checker.own ? watchDevice(checker, options) : watchNoDevice(checker);
  fill(checker, holdLesson(checker, stop.signal));
  checker.form.addEventListener("input", (event) => edited(checker, event.target), options);
  checker.form.addEventListener("click", (event) => clicked(checker, event.target), options);
  checker.form.addEventListener("submit", (event) => event.preventDefault(), options);
  checker.undo = offerUndo(checker, options);
  addEventListener("hashchange", () => addressChanged(checker), options);
  addEventListener("pagehide", () => writeAddress(checker), options);
  addEventListener("beforeprint", () => readyForPaper(checker.form), options);
  offerSharing(checker, options);
  offerKeeping(checker, options);
  keepInView(options);
  root.querySelector("[data-why]").addEventListener("click", () => goToResults(root), options);
  const unfollow = follow((state) => stateChanged(checker, state));
  judge(checker);
  return () => {
    stop.abort();
    unfollow();
    forget(checker);
    checker.settle();
    clearTimeout(checker.addressTimer);
    clearTimeout(checker.workingTimer);
  };
}

function fill(checker, lesson) {
  addressRead(checker);
  const typed = checker.own ? typedBefore() : null;
  const shared = typed?.request ?? lesson ?? (checker.own ? fromFragment(location.hash) : null);
  write(checker.form, shared ?? beginning(checker, recall("last") ?? {}));
  checker.device.written(typed);
}

// What a lesson's case was changed to stands in no address.
function holdLesson(checker, signal) {
  const { root, own, form } = checker;
  const place = [...document.querySelectorAll("[data-checker]")].indexOf(root);
  const state = () => (checker.isTyped ? read(form) : null);
  const before = own ? null : holdUnsaved({ name: `case ${place}`, words: "a case in a lesson", state }, signal);
  checker.isTyped = before !== null;
  return before;
}

/** What a form begins with: the case of its lesson, or the local code and device that were said last. */
function beginning({ form, root: { dataset: { given } } }, last) {
  return given ? JSON.parse(given) : known(form, last);
}

function edited(checker, changed) {
  const field = changed.closest("[data-field]");
  if (field) {
    keepOneAnswer(field, changed);
  }
  touched(checker, changed);
  judgeTyped(checker);
}

function touched(checker, changed) {
  checker.isTyped = true;
  checker.device.typed(changed);
  const entry = changed.closest("[data-entry]");
  if (entry) {
    delete entry.dataset.untouched;
    showInWords(entry);
  }
}

function clicked(checker, target) {
  const button = target.closest("button");
  if (!button) {
    return;
  }
  if ("add" in button.dataset) {
    addNext(button.closest("[data-many]")).querySelector("input, select, textarea").focus();
  } else if ("start" in button.dataset) {
    addNext(button.closest("[data-many]"), JSON.parse(button.dataset.start)).querySelector("input").focus();
  } else if ("remove" in button.dataset) {
    checker.device.typed(button);
    takeAway(button.closest("[data-entry]"));
  } else if ("suggestion" in button.dataset) {
    suggest(checker, button);
  } else if ("clear" in button.dataset) {
    write(checker.form, beginning(checker, settings(checker, checker.request)));
    checker.device.written();
  } else {
    return;
  }
  judgeTyped(checker);
}

function judgeTyped(checker) {
  judge(checker);
  writeAtOnce(checker);
}

function suggest(checker, button) {
  const field = button.closest("[data-field]");
  const input = field.querySelector("input");
  input.value = button.dataset.suggestion;
  keepOneAnswer(field, input);
  touched(checker, input);
  if (/^\W+$/.test(input.value)) {
    input.focus(); // a sign waits for its figure
  }
}

function goToResults(root) {
  const results = root.querySelector("[data-results]");
  results.scrollIntoView();
  results.focus({ preventScroll: true });
}

function takeAway(entry) {
  const list = entry.closest("[data-many]");
  removeEntry(entry);
  if (!list.querySelector("[data-entry]")) {
    addEntry(list);
  }
  list.querySelector(":scope > [data-add]").focus();
}

function judge(checker) {
  checker.device.mark();
  const request = read(checker.form);
  checker.request = request;
  showUnits(checker.form);
  showFarDay(checker.root, request.on);
  keepInMind(checker, request);
  clearTimeout(checker.workingTimer);
  if (checker.stage === "ready") {
    checker.workingTimer = setTimeout(() => showWorking(checker.root), WORKING_AFTER);
  }
  checker.judged = null;
  expectVerdict(checker);
  ask(checker, checker.slug, request, (reply) => {
    checker.judged = { request, reply };
    show(checker, reply);
    checker.settle();
  });
}

// Whoever waits for a verdict looks again: at the verdict, or at a case that has changed.
function expectVerdict(checker) {
  checker.settle?.();
  checker.coming = new Promise((resolve) => { checker.settle = resolve; });
  checker.changed?.();
}

function keepInMind(checker, request) {
  keepInAddress(checker);
  if (checker.own) {
    remember("last", { ...recall("last"), ...settings(checker, request) });
  }
}

/** The local code and the device of a request, as far as the form knows what was given for them. */
function settings({ form }, request) {
  const asked = ["code", "device"].map((name) => [name, partAt(form, name)]);
  const sound = asked.filter(([, part]) => part && !part.querySelector("[data-as-given]"));
  return Object.fromEntries(sound.map(([name]) => [name, request[name]]));
}

function addressChanged(checker) {
  addressRead(checker);
  const shared = checker.own ? fromFragment(location.hash) : null;
  if (shared && toFragment(shared) !== toFragment(checker.request)) {
    const take = () => { write(checker.form, shared); checker.device.written(); judge(checker); };
    checker.isTyped ? checker.undo.replacing("What was typed here made way for the case of the address.", take) : take();
    checker.isTyped = false;
  }
}

function show(checker, reply) {
  clearTimeout(checker.workingTimer);
  checker.reply = reply;
  if (reply.kind === "invalid") {
    showUnfinished(checker.root, showProblems(checker.form, reply.errors), reply.errors);
    showResults(checker.root, null);
    return;
  }
  showProblems(checker.form, {});
  if (isNoAnswer(reply)) {
    showCrash(checker.root, reply);
    showResults(checker.root, null);
    return;
  }
  showVerdict(checker.root, reply);
  showResults(checker.root, reply);
}

function stateChanged(checker, state) {
  checker.stage = state.stage;
  if (state.stage === "failed") {
    clearTimeout(checker.workingTimer);
    checker.settle?.();
    showResults(checker.root, null);
    showFailure(checker.root, state);
  } else if (state.stage !== "ready") {
    showProgress(checker.root, state);
  } else if (state.long && !checker.judged) {
    clearTimeout(checker.workingTimer);
    showLong(checker.root);
  } else if (!checker.reply) {
    showWorking(checker.root);
  }
}
