import { fromFragment } from "../basics/address.js";
import { follow, start } from "../client/client.js";
import { showFarDay } from "../form/far-day.js";
import { keepOneAnswer } from "../form/fields.js";
import { read, showProblems, write } from "../form/form.js";
import { isNoAnswer } from "../basics/outcomes.js";
import { showMapping } from "./mapping.js";
import { ofFile, ofKept, ofText } from "./pieces.js";
import { showRows } from "./rows.js";
import { Refused, run } from "./run.js";
import { FORMS, saveButtons } from "./save.js";
import { showFirst, showNotes, showTotals } from "./summary.js";
import { soFar } from "./words.js";
import { element, say } from "../basics/element.js";
import { undoPart } from "../form/undo.js";
import { holdUnsaved, wouldBeLost } from "../basics/unsaved-work.js";
import { showCrash, showFailure, showLong, showProgress, showState, showUnfinished, showVerdict } from "../reply/verdict.js";

/** Bring the page for a whole schedule to life; call what is returned when it goes. */
export function mount(root) {
  const stop = new AbortController();
  const page = { root, signal: stop.signal, part: (name) => root.querySelector(`[data-${name}]`), chosen: new Map() };
  page.form = page.part("inputs");
  page.meanings = JSON.parse(root.dataset.meanings);
  listen(page);
  const unfollow = follow((state) => stateChanged(page, state));
  start();
  const before = holdUnsaved({ name: "schedule", words: "a schedule too long to be carried over", state: () => stateOf(page) }, page.signal);
  before ? goOn(page, before) : openCase(page);
  return () => {
    stop.abort();
    page.running?.abort();
    unfollow();
  };
}

function listen(page) {
  const on = (target, event, action) => target.addEventListener(event, action, { signal: page.signal });
  on(page.part("file"), "change", ({ target }) => target.files[0] && takeFile(page, target.files[0]));
  on(page.part("text"), "paste", () => setTimeout(() => judgeText(page)));
  on(page.part("text"), "input", () => { page.schedule = null; page.told?.remove(); });
  on(page.part("judge"), "click", () => (page.schedule ? judge(page) : judgeText(page)));
  on(page.part("stop"), "click", () => page.running?.abort());
  on(page.form, "input", ({ target }) => {
    const field = target.closest("[data-field]");
    field && keepOneAnswer(field, target);
    showFarDay(page.root, read(page.form).on);
    if (page.wasGiven && !isGiven(page)) {
      judgeText(page, page.chosen);
    }
  });
  on(page.form, "submit", (event) => event.preventDefault());
  on(page.part("drop"), "dragover", (event) => event.preventDefault());
  on(page.part("drop"), "drop", (event) => dropped(page, event));
  on(globalThis, "hashchange", () => replacing(page, () => openCase(page)));
}

// A file that was chosen is no more at hand once the page is loaded again: its text stands in its place.
function stateOf(page) {
  const text = page.part("text").value;
  const { schedule, chosen, form } = page;
  if (!schedule && !text) {
    return null;
  }
  const { name, file } = schedule ?? {};
  return file === null ? undefined : { text, chosen: [...chosen], request: read(form), judged: Boolean(schedule), name, file };
}

function goOn(page, { text, chosen, request, judged, name, file }) {
  write(page.form, request);
  page.part("text").value = text;
  if (judged) {
    take(page, file ? ofKept(name, file) : ofText(text), new Map(chosen));
  }
}

function dropped(page, event) {
  const { files } = event.dataTransfer;
  const text = event.dataTransfer.getData("text/plain");
  event.preventDefault();
  if (files.length) {
    takeFile(page, files[0]);
  } else if (text) {
    replacing(page, () => {
      page.part("text").value = text;
      judgeText(page);
    });
  }
}

/** Put other rows in the place of those that stand there, with a way back. */
function replacing(page, action) {
  const before = stateOf(page);
  page.told?.remove();
  action();
  if (before?.text?.trim() && before.text !== page.part("text").value) {
    page.told = undoPart("The rows that stood here made way for others.", () => { page.told.remove(); goOn(page, before); });
    page.part("drop").append(page.told);
  }
}

// An example, or a case that somebody shared, stands in the address.
function openCase(page) {
  const { text = "", mapping = [], ...request } = fromFragment(location.hash) ?? {};
  const chosen = meanings(mapping);
  write(page.form, chosen ? request : { mapping, ...request });
  showFarDay(page.root, request.on);
  page.part("text").value = text;
  if (text || isGiven(page)) {
    take(page, ofText(text), chosen ?? new Map()); // what no field holds is refused by name, with rows or without
  }
}

function isGiven(page) {
  return page.form.querySelector("[data-as-given]") !== null;
}

// What columns were said to hold, where it is said as the page says it; else null.
function meanings(mapping) {
  const sound = Array.isArray(mapping) && mapping.every((one) => Object.keys(one).sort().join() === "column,means");
  return sound ? new Map(mapping.map(({ column, means }) => [column, means])) : null;
}

function judgeText(page, chosen) {
  const text = page.part("text").value;
  if (text.trim()) {
    take(page, ofText(text), chosen);
  } else {
    page.schedule = null;
    page.wasGiven = false;
    showState(page.root, "unfinished", "Not judged yet", "Choose a file, or paste its rows.");
  }
}

function takeFile(page, file) {
  const schedule = ofFile(file);
  schedule.kept.then(wouldBeLost);
  take(page, schedule);
}

function take(page, schedule, chosen = new Map()) {
  page.schedule = schedule;
  page.chosen = chosen;
  judge(page);
}

async function judge(page) {
  page.running?.abort();
  page.wasGiven = isGiven(page);
  page.again = false;
  const running = new AbortController();
  page.running = running;
  const { name } = page.schedule;
  const found = { name, rows: [], counts: {}, pieces: Object.fromEntries(FORMS.map((form) => [form, []])), read: 0 };
  begun(page);
  try {
    const heard = (reply) => hear(page, found, reply);
    const end = await run(page.schedule, request(page), FORMS, heard, running.signal);
    if (page.running === running) {
      end ? ended(page, { ...found, reply: end.reply, frames: end.frames }) : stoppedEarly(page, found);
    }
  } catch (error) {
    if (page.running === running) {
      refused(page, error);
    }
  }
}

function request(page) {
  const mapping = [...page.chosen].map(([column, means]) => ({ column, means }));
  return { ...read(page.form), ...(mapping.length && { mapping }) };
}

function begun(page) {
  for (const name of ["totals", "mapping", "first", "rows", "notes"]) {
    page.part(name).replaceChildren();
  }
  showProblems(page.form, {});
  showRunning(page, true);
  showState(page.root, "waiting", "Judging", page.schedule.name);
}

function showRunning(page, yes) {
  page.running = yes ? page.running : null;
  page.part("stop").hidden = !yes;
  page.part("judge").hidden = yes;
  const bar = page.part("so-far");
  bar.hidden = !yes;
  bar.max = page.schedule.size;
  bar.value = 0;
}

function hear(page, found, reply) {
  for (const row of reply.rows) {
    found.rows.push(row);
    found.read += row.cells.join().length + 2;
    if (row.outcome && row.row !== "same device") {
      found.counts[row.outcome] = (found.counts[row.outcome] ?? 0) + 1;
    }
  }
  FORMS.forEach((form) => found.pieces[form].push(reply.pieces[form] ?? ""));
  page.part("so-far").value = Math.min(found.read, page.schedule.size);
  say(page.part("said"), soFar(found.rows.length, found.counts));
}

function ended(page, found) {
  const { reply, rows } = found;
  const headings = reply.answer.mapping.map(({ heading }) => heading);
  showRunning(page, false);
  say(page.part("said"), `${rows.length} rows read.`);
  showVerdict(page.root, reply);
  page.part("why").hidden = true;
  showTotals(page.part("totals"), reply);
  page.part("totals").append(element("p", { class: "inputs__actions" }, ...saveButtons(found)));
  showMapping(page.part("mapping"), reply.answer.mapping, page.meanings, page.chosen, () => judge(page));
  showFirst(page.part("first"), reply, rows, headings);
  showRows(page.part("rows"), rows, headings);
  showNotes(page.part("notes"), reply);
}

function stoppedEarly(page, { rows, counts }) {
  const line = rows.at(-1)?.line ?? 0;
  showRunning(page, false);
  say(page.part("said"), `Stopped after line ${line}.`);
  const outcome = counts.fail ? "fail" : "cannot-say";
  showState(page.root, outcome, "Stopped", `Nothing is said of the rows after line ${line}.`);
  showRows(page.part("rows"), rows, []);
}

function refused(page, error) {
  showRunning(page, false);
  say(page.part("said"), "");
  if (!(error instanceof Refused)) {
    page.again = true;
    stateChanged(page, page.state); // the bar says why the checkers do not run
    return;
  }
  const { reply } = error;
  if (isNoAnswer(reply)) {
    showCrash(page.root, reply);
  } else {
    showUnfinished(page.root, showProblems(page.form, reply.errors), reply.errors);
  }
}

function stateChanged(page, state) {
  page.state = state;
  if (state.stage === "failed") {
    showFailure(page.root, state);
  } else if (state.stage !== "ready") {
    showProgress(page.root, state);
  } else if (page.running) {
    state.long ? showLong(page.root) : showState(page.root, "waiting", "Judging", page.schedule.name);
  } else if (page.again) {
    judge(page);
  } else if (!page.schedule) {
    showState(page.root, "unfinished", "Not judged yet", "Choose a file, or paste its rows.");
  }
}
