import { element, say } from "../../basics/element.js";
import { handOver } from "../../basics/download.js";
import { currentBuild } from "../entry/entry.js";
import { fileOf } from "../file/file.js";
import { offerImport } from "./import.js";
import { entryItem, markItem } from "./item.js";
import { offerJobActions } from "./job.js";
import { whyNotKept } from "../store/reasons.js";
import { showRecord } from "./record.js";
import { holdTyped } from "./drafts.js";
import { judgeAndList, showStandings, standingLine } from "../standing/list.js";
import { openLog } from "../store/store.js";
import { showWarning } from "../store/warning.js";
import { counted } from "../entry/words.js";
import { yearsParts } from "./years.js";

const AT_ONCE = 100; // entries on the screen before the reader asks for more

/** Bring the log's page to life; call what is returned when it goes. */
export async function mount(root) {
  const stop = new AbortController();
  const page = { root, signal: stop.signal, shown: AT_ONCE, entries: [], standings: new Map(), items: new Map(), part: (name) => root.querySelector(`[data-${name}]`) };
  [page.log, page.build] = await Promise.all([openLog(), currentBuild()]);
  page.change = (change) => makeChange(page, change);
  page.say = (text, ...more) => page.part("said").replaceChildren(text, ...more);
  page.refresh = () => refresh(page);
  page.showEntry = (entry) => showEntry(page, entry);
  page.chosen = () => page.entries.filter(({ job }) => !page.job || job === page.job.name);
  listen(page);
  offerImport(page);
  offerJobActions(page);
  addEventListener("focus", page.refresh, { signal: page.signal }); // another tab may have written
  await refresh(page);
  holdTyped(page);
  root.dataset.ready = "";
  judgeKept(page);
  return () => stop.abort();
}

function listen(page) {
  const on = (name, event, action) => page.part(name).addEventListener(event, action, { signal: page.signal });
  on("job", "change", ({ target }) => choose(page, target.value));
  on("undo", "click", () => undo(page));
  on("more", "click", () => { page.shown += AT_ONCE; showList(page); });
  on("save-csv", "click", () => save(page, "csv"));
  on("save-json", "click", () => save(page, "json"));
  on("show-record", "click", () => showRecord(page));
  addEventListener("beforeprint", () => showRecord(page), { signal: page.signal });
}

// Whatever came in is looked at too, as what an older build kept. The answer comes late: only the
// marks change then, and what is open, typed or focused stays.
async function judgeKept(page) {
  await judgeAndList(page);
  for (const item of page.part("list").querySelectorAll("[data-id]")) {
    markItem(item, standingLine(page.standings.get(item.dataset.id)));
  }
}

function choose(page, name) {
  page.job = name === "all" ? null : { name: name.slice(1) };
  page.shown = AT_ONCE;
  show(page);
}

async function refresh(page) {
  try {
    const [entries, last] = [await page.log.entries(), await page.log.lastChange()];
    Object.assign(page, { entries: sorted(entries), last });
  } catch (error) {
    say(page.part("warning"), `The log cannot be read: ${whyNotKept(error)}. What is kept stays as it is. Close other pages of this site, and load this one again.`);
    return;
  }
  showWarning(page.part("warning"), page.log);
  page.part("undo").hidden = page.last === null;
  say(page.part("undo"), `Undo: ${page.last?.what}`);
  show(page);
}

function show(page) {
  showJobs(page);
  showStandings(page);
  showList(page);
  if (!page.part("record").hidden) {
    showRecord(page);
  }
}

// By job, then by device as people count (way 2 before way 10), then the newest day first.
function sorted(entries) {
  const words = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });
  return entries.sort((one, other) =>
    words.compare(one.job, other.job)
    || words.compare(one.device, other.device)
    || other.reply.on.localeCompare(one.reply.on)
    || other.kept.localeCompare(one.kept));
}

function showJobs(page) {
  const names = [...new Set(page.entries.map(({ job }) => job))];
  if (page.job && !names.includes(page.job.name)) {
    page.job = null;
  }
  const wanted = page.job ? `=${page.job.name}` : "all";
  page.part("job").replaceChildren(
    element("option", { value: "all" }, `All jobs (${page.entries.length})`),
    ...names.map((name) => element("option", { value: `=${name}` }, `${name || "Without a job"} (${page.entries.filter(({ job }) => job === name).length})`)),
  );
  page.part("job").value = wanted;
  page.part("with-job").hidden = !page.job;
}

function showList(page) {
  const chosen = page.chosen();
  const items = [];
  let job = null;
  for (const entry of chosen.slice(0, page.shown)) {
    if (entry.job !== job) {
      job = entry.job;
      items.push(element("h2", {}, job || "Without a job"));
    }
    items.push(itemOf(page, entry));
  }
  page.part("list").replaceChildren(...(items.length ? items : [element("p", {}, "Nothing is kept yet. Under each checker's form is “Keep in the job log”.")]));
  page.part("list").append(...yearsParts(chosen));
  page.part("more").hidden = chosen.length <= page.shown;
  page.part("with-entries").hidden = chosen.length === 0;
}

// An entry that has not changed keeps its place on the screen, with whatever is open or typed in it.
function itemOf(page, entry) {
  const key = `${entry.id} ${entry.changed}`;
  const item = page.items.get(key) ?? entryItem(page, entry);
  page.items.set(key, item);
  markItem(item, standingLine(page.standings.get(entry.id)));
  return item;
}

function showEntry(page, { id, job }) {
  page.job = { name: job };
  page.shown = page.entries.length;
  show(page);
  const item = page.part("list").querySelector(`[data-id="${id}"]`);
  item.open = true;
  item.scrollIntoView();
  item.querySelector("summary").focus({ preventScroll: true });
}

async function makeChange(page, change) {
  try {
    await page.log.change(change);
  } catch (error) {
    page.say(`${error.maybe ? "Perhaps nothing" : "Nothing"} was changed: ${whyNotKept(error)}. ${wayOn(error)}`);
    await refresh(page);
    return false;
  }
  await refresh(page);
  judgeKept(page);
  return true;
}

function wayOn({ name }) {
  return name === "QuotaExceededError"
    ? "Save the log as a file, and free some space."
    : "Save the log as a file, load this page again, and try once more.";
}

async function undo(page) {
  try {
    const what = await page.log.undo(page.last.key);
    page.say(what === null ? "Nothing was undone: another page has changed the log since. This is how it stands now." : `Undone: ${what}.`);
  } catch (error) {
    page.say(`${error.maybe ? "Perhaps not" : "Not"} undone: ${whyNotKept(error)}. ${wayOn(error)}`);
  }
  await refresh(page);
  judgeKept(page);
}

function save(page, kind) {
  const entries = page.chosen();
  const file = fileOf(kind, entries, page.job?.name ?? "", page.build);
  handOver(file);
  page.say(`${counted(entries.length, "entry", "entries")} handed to this browser as ${file.name}.`);
}
