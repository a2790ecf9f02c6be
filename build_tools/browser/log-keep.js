import { element, say } from "./element.js";
import { handOver } from "./hand-over.js";
import { currentBuild, makeEntry } from "./log-entry.js";
import { entryText } from "./log-text.js";
import { fileOf } from "./log-file.js";
import { askToKeep, openLog, warningAbout, whyNotWritten } from "./log-store.js";
import { recall, remember } from "./memory.js";
import { ROOT } from "./places.js";

const opened = new WeakSet();

/** The panel under a checker's form: labels, what threatens the log, and the button. */
export async function openPanel(panel, checker, options) {
  const log = await openLog();
  say(panel.querySelector("[data-warning]"), await warningAbout(log));
  await suggest(panel, log);
  if (!opened.has(panel)) {
    opened.add(panel);
    const form = panel.querySelector("form");
    form.elements.job.value ||= recall("job") ?? "";
    form.addEventListener("submit", () => keepOnce(panel, checker), options);
    form.dataset.alive = "";
  }
}

async function suggest(panel, log) {
  const entries = await log.entries();
  for (const name of ["job", "device"]) {
    const known = [...new Set(entries.map((entry) => entry[name]))].filter(Boolean).sort();
    panel.querySelector(`[data-known="${name}"]`).replaceChildren(...known.map((value) => element("option", { value })));
  }
}

// A second tap while the first is being written must not make a second entry.
async function keepOnce(panel, checker) {
  const button = panel.querySelector("form button");
  if (button.getAttribute("aria-disabled") !== "true") {
    button.setAttribute("aria-disabled", "true");
    await keep(panel, checker);
    button.removeAttribute("aria-disabled");
  }
}

async function keep(panel, checker) {
  const { job, device, note } = panel.querySelector("form").elements;
  const { judged } = checker;
  const typed = JSON.stringify([job.value, device.value, note.value, judged?.request]);
  if (judged?.reply.kind !== "result") {
    tell(panel, "There is no verdict yet, so nothing to keep.");
  } else if (typed === checker.kept) {
    tell(panel, "This verdict is in the log already.", linkToLog());
  } else {
    const given = { job: job.value, device: device.value, note: note.value };
    const made = makeEntry(given, { checker: checker.slug, ...judged }, await currentBuild());
    if (await write(panel, made)) {
      remember("job", made.job);
      note.value = "";
      checker.device.kept();
      checker.kept = JSON.stringify([job.value, device.value, "", judged.request]);
    }
  }
}

async function write(panel, entry) {
  const log = await openLog();
  const promise = askToKeep();
  try {
    await log.change({ what: `kept ${entry.device || "a verdict"}`, puts: [entry] });
  } catch (error) {
    tell(panel, `Not kept: ${whyNotWritten(error)}. What you typed still stands above. Take the verdict along this way:`, ...ways(panel, entry));
    return false;
  }
  tell(panel, `Kept${entry.job ? ` in “${entry.job}”` : ""}.`, linkToLog());
  await promise;
  say(panel.querySelector("[data-warning]"), await warningAbout(log));
  return true;
}

// What cannot be kept can still be carried off.
function ways(panel, entry) {
  const save = element("button", { type: "button", class: "action" }, "Save it as a file");
  save.addEventListener("click", () => handOver(fileOf("json", [entry], entry.device, entry.build)));
  const copy = element("button", { type: "button", class: "action" }, "Copy it as text");
  copy.addEventListener("click", async () => {
    const text = entryText(entry);
    try {
      await navigator.clipboard.writeText(text);
      tell(panel, "Copied.");
    } catch {
      tell(panel, text);
    }
  });
  return [save, copy];
}

function linkToLog() {
  return element("a", { class: "action", href: new URL("log/", ROOT).href }, "Open the job log");
}

function tell(panel, text, ...more) {
  panel.querySelector("[data-told]").replaceChildren(text, ...more.flatMap((one) => [" ", one]));
}
