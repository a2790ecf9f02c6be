import { toFragment } from "../../basics/address.js";
import { follow } from "../../client/client.js";
import { fetchedLater, whyNotFetched } from "../../client/lazy-import.js";
import { typedIn, waysOut } from "./offer.js";
import { holdUnsaved } from "../../basics/unsaved-work.js";

const SLOW = 2000; // milliseconds after which the ways out are offered beside the waiting

const keeping = fetchedLater(() => import("./keep.js"));

/**
 * Let the reader keep a verdict in the job log.
 *
 * What writes it is fetched once the first verdict is there, ahead of any tap. The way to take a
 * verdict along is here already, for where that did not come.
 */
export function offerKeeping(checker, options) {
  const panel = checker.root.querySelector("[data-keep]");
  if (!panel) {
    return;
  }
  const form = panel.querySelector("form");
  const offer = { checker, panel, form, button: form.querySelector("button"), toldOf: null };
  checker.changed = () => changed(offer);
  form.addEventListener("input", checker.changed, options);
  form.addEventListener("submit", (event) => { event.preventDefault(); keepOnce(offer); }, options);
  panel.addEventListener("toggle", () => panel.open && open(offer), options);
  holdLabels(panel, form, options.signal);
  fetchInTime(options);
}

// Labels are of what stands above: the tab alone knows them until they are kept.
function holdLabels(panel, form, signal) {
  const boxes = ["job", "device", "note"].map((name) => form.elements[name]);
  const typed = () => boxes.map(({ value }) => value);
  const state = () => (panel.open || typed().some(Boolean) ? { open: panel.open, typed: typed() } : null);
  const before = holdUnsaved({ name: "labels", words: "labels that are not kept", state }, signal);
  boxes.forEach((box, place) => { box.value = before?.typed[place] ?? box.value; });
  panel.open = before?.open ?? panel.open;
}

function fetchInTime({ signal }) {
  const stop = follow(({ answered }) => answered && setTimeout(() => keeping().then(stop, stop)));
  signal.addEventListener("abort", stop);
}

async function open(offer) {
  const part = await keeping().catch(() => null);
  if (part) {
    await part.openPanel(offer);
  } else {
    offer.panel.querySelector("[data-warning]").textContent =
      `Nothing can be kept from here: ${whyNotFetched()}. “Keep this verdict” gives it to you as a file or as text.`;
  }
}

// A second tap while the first is being written must not make a second entry.
async function keepOnce(offer) {
  if (offer.button.getAttribute("aria-disabled") !== "true") {
    offer.button.setAttribute("aria-disabled", "true");
    await keep(offer);
    offer.button.removeAttribute("aria-disabled");
  }
}

async function keep(offer) {
  const typed = typedIn(offer);
  const judged = offer.checker.judged ?? await verdictOf(offer);
  if (judged === null && typed !== typedIn(offer)) {
    tell(offer, "Not kept: something was changed before the verdict was there. Keep it again.");
  } else if (judged?.reply.kind !== "result") {
    tell(offer, "There is no verdict yet, so nothing to keep.");
  } else {
    await handOn(offer, typed, judged);
  }
}

// A verdict on what is typed now, or null where that changed, or where none can come.
async function verdictOf(offer) {
  const { checker } = offer;
  const { request } = checker;
  tell(offer, "Waiting for the verdict.");
  await checker.coming;
  return checker.judged?.request === request ? checker.judged : null;
}

// Whatever becomes of it, what stood there at the tap can be taken along.
async function handOn(offer, typed, judged) {
  offer.way = asShown(offer);
  tell(offer, "Keeping it.");
  const late = setTimeout(() => tell(offer, "Keeping it. The browser has not answered yet. Take the verdict along meanwhile:", ...waysOut(offer)), SLOW);
  try {
    const { keepVerdict } = await keeping().catch(() => { throw new Error(whyNotFetched()); });
    const told = await keepVerdict(offer, typed, judged);
    tell(offer, ...told);
  } catch (error) {
    tell(offer, `${error.maybe ? "Perhaps not" : "Not"} kept: ${error.message}. Take the verdict along this way:`, ...waysOut(offer));
    offer.toldOf = null; // this stands until something is kept
  }
  clearTimeout(late);
}

function tell(offer, text, ...more) {
  offer.toldOf = typedIn(offer);
  offer.panel.querySelector("[data-told]").replaceChildren(text, ...more.flatMap((one) => [" ", one]));
}

// What was said of one case must not stand beside another.
function changed(offer) {
  const isWriting = offer.button.getAttribute("aria-disabled") === "true";
  if (!isWriting && offer.toldOf !== null && offer.toldOf !== typedIn(offer)) {
    offer.panel.querySelector("[data-told]").replaceChildren();
    offer.toldOf = null;
  }
}

// The address opens the case again, for the day it was judged for.
function asShown({ checker: { root, request, reply }, form: { elements: { job, device, note } } }) {
  const address = new URL(location.href);
  address.hash = toFragment({ on: reply.on, ...request });
  const shown = [...root.querySelectorAll("[data-word], [data-detail], [data-results]")];
  const parts = [job.value, device.value, note.value, ...shown.map((part) => part.innerText), address.href];
  const text = parts.filter(Boolean).join("\n");
  return { text, file: { name: "verdict.txt", type: "text/plain;charset=utf-8", text } };
}
