import { element } from "../../basics/element.js";
import { typedIn, waysOut } from "./offer.js";
import { currentBuild, makeEntry } from "../entry/entry.js";
import { fileOf } from "../file/file.js";
import { whyNotKept } from "../store/reasons.js";
import { askToKeep, openLog } from "../store/store.js";
import { entryText } from "../entry/text.js";
import { showWarning } from "../store/warning.js";
import { recall, remember } from "../../basics/memory.js";
import { ROOT } from "../../shared/site-urls.js";

/** The panel under a checker's form is opened: labels known so far, and what threatens the log. */
export async function openPanel({ panel, form }) {
  if (!("alive" in form.dataset)) {
    form.elements.job.value ||= recall("job") ?? "";
  }
  const log = await openLog();
  await Promise.all([warn(panel, log), suggest(panel, log)]);
  form.dataset.alive = "";
}

function warn(panel, log) {
  return showWarning(panel.querySelector("[data-warning]"), log);
}

async function suggest(panel, log) {
  const entries = await log.entries().catch(() => []);
  for (const name of ["job", "device"]) {
    const known = [...new Set(entries.map((entry) => entry[name]))].filter(Boolean).sort();
    panel.querySelector(`[data-known="${name}"]`).replaceChildren(...known.map((value) => element("option", { value })));
  }
}

/**
 * Keep a verdict; gives what to tell: a text and what follows it.
 *
 * Inputs: what `offerKeeping` holds of its panel; what was typed at the tap; the request judged and
 * its reply. Rejects with the reason, in words that follow a colon; `maybe` says that nobody knows.
 */
export async function keepVerdict(offer, typed, judged) {
  const entry = await entryOf(offer, typed, judged);
  offer.way = { file: fileOf("json", [entry], entry.device, entry.build), text: entryText(entry) };
  try {
    return await keepIn(await openLog(), offer, entry);
  } catch (error) {
    throw Object.assign(new Error(whyNotKept(error)), { maybe: error.maybe });
  }
}

// Whatever is kept again, after whatever came of the first time, is the same entry still.
async function entryOf(offer, typed, judged) {
  if (offer.last?.typed !== typed) {
    const [job, device, note] = JSON.parse(typed);
    const entry = makeEntry({ job, device, note }, { checker: offer.checker.slug, ...judged }, await currentBuild());
    offer.last = { typed, entry, tried: false };
  }
  return offer.last.entry;
}

async function keepIn(log, offer, entry) {
  const isOnDevice = log.where === "device";
  if (offer.last.isKept && isOnDevice && await holds(log, entry)) {
    return ["This verdict is in the log already.", linkToLog()];
  }
  await log.change({ what: `kept ${entry.device || "a verdict"}`, puts: [entry] });
  const isAsTyped = typedIn(offer) === offer.last.typed;
  goOn(offer, entry);
  askToKeep().then(() => warn(offer.panel, log)); // a browser may ask the reader, and wait for ever
  const since = isAsTyped ? "" : " What you typed since is not kept.";
  return isOnDevice
    ? [`Kept${entry.job ? ` in “${entry.job}”` : ""}.${since}`, linkToLog()]
    : [`Not kept on this device: ${log.why}. This page alone holds it, until it is closed.${since} Take the verdict along this way:`, ...waysOut(offer), linkToLog()];
}

// Another page may have deleted it since.
async function holds(log, entry) {
  return (await log.entries()).some(({ id }) => id === entry.id);
}

// The note is of this verdict alone; job and device may be those of the next one too.
function goOn(offer, entry) {
  const [job, device, note, request] = JSON.parse(offer.last.typed);
  const box = offer.form.elements.note;
  remember("job", entry.job);
  box.value = box.value === note ? "" : box.value;
  offer.checker.device.kept();
  offer.last = { entry, typed: JSON.stringify([job, device, "", request]), isKept: true };
}

function linkToLog() {
  return element("a", { class: "action", href: new URL("log/", ROOT).href }, "Open the job log");
}
