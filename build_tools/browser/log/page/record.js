import { element } from "../../basics/element.js";
import { entryParts } from "./record-entry.js";
import { standingLine } from "../standing/list.js";
import { counted, dayInWords, titleOf } from "../entry/words.js";
import { soFarWord, toneOf, verdictOf, wordOf } from "../../basics/outcomes.js";
import { verdictShape } from "../../basics/verdict-shapes.js";
import { OUTCOMES } from "../../generated/words.js";

const SIGNED = ["Tested by", "Checked by"];

/** Lay out the chosen entries as a record for print: the same on the screen, where it can be read first. */
export function showRecord(page) {
  const place = page.part("record");
  const sheet = recordParts(page.chosen(), page.job?.name ?? null, page.build);
  place.replaceChildren(controls(page, place), ...markLost(page, sheet));
  const wasHidden = place.hidden;
  place.hidden = false;
  if (wasHidden) {
    place.querySelector("button").focus();
    place.scrollIntoView();
  }
}

// The record is what was kept; that it no longer stands is said beside it, not in its place.
function markLost(page, sheet) {
  const lines = page.chosen().map((entry) => standingLine(page.standings.get(entry.id)));
  const articles = sheet.filter((part) => part.matches("article"));
  articles.forEach((article, number) => {
    const line = lines[number];
    line && article.querySelector("h3").after(element("p", { class: "sheet__lost" }, element("strong", {}, line)));
  });
  const lost = lines.filter(Boolean).length;
  const says = `${lost} of these verdicts no longer ${lost === 1 ? "stands, and is" : "stand, and are"} marked.`;
  const line = element("p", { class: "sheet__lost" }, element("strong", {}, says));
  return sheet.flatMap((part) => (lost > 0 && part.matches(".sheet__tally") ? [part, line] : [part]));
}

function controls(page, place) {
  const print = element("button", { type: "button", class: "action" }, "Print it");
  print.addEventListener("click", () => globalThis.print());
  const close = element("button", { type: "button", class: "action" }, "Close the record");
  close.addEventListener("click", () => {
    place.hidden = true;
    place.replaceChildren();
    page.part("show-record").focus();
  });
  return element("p", { class: "log__line sheet__controls" }, print, close);
}

function recordParts(entries, job, build) {
  const general = generalCautions();
  const notes = [...new Set(entries.map(({ reply }) => reply.local_note).filter(Boolean))];
  return [
    element("h2", { class: "sheet__title" }, `Record of judged tests${job ? `: ${job}` : ""}`),
    element("p", { class: "sheet__about" },
      `${counted(entries.length, "entry", "entries")}, written on ${dayInWords(new Date().toISOString())} by build ${build}.`),
    tally(entries),
    ...entries.map((entry) => sheet(entry, [...general, ...notes])),
    element("section", { class: "sheet__end" },
      element("h3", {}, "Cautions"),
      element("ul", { class: "cautions" }, ...general.map((one) => element("li", {}, one))),
      ...notes.map((note) => element("p", {}, note)),
      element("div", { class: "sheet__signed" },
        element("p", {}, "This sheet repeats what was typed and what the checkers said of it. It is no certificate: where a form is prescribed, fill in that form."),
        ...SIGNED.map(signature))),
  ];
}

// What stands at the foot of every page is said once, at the end of the sheet.
function generalCautions() {
  return [...document.querySelectorAll(".foot .cautions li")].map((one) => one.textContent.trim());
}

function tally(entries) {
  const shown = entries.map(({ reply }) => verdictOf(reply).word);
  const count = (word) => shown.filter((one) => one === word).length;
  const words = [...Object.values(OUTCOMES), soFarWord(), wordOf("plan")];
  const counts = words.filter(count).map((word) => `${word}: ${count(word)}`);
  return element("p", { class: "sheet__tally" }, counts.join(" · "));
}

function sheet(entry, said) {
  const { job, device, reply } = entry;
  const verdict = verdictOf(reply);
  return element(
    "article",
    { class: "sheet__entry" },
    element("h3", { class: "sheet__head" },
      element("span", { class: "sheet__verdict", ...toneOf(verdict) }, verdictShape(verdict), ` ${verdict.word}`),
      ` ${device || "Device without a label"}`),
    element("p", { class: "sheet__about" }, [job, titleOf(entry)].filter(Boolean).join(". ")),
    ...entryParts(entry, "h4", said),
  );
}

function signature(role) {
  const line = (name) => element("span", { class: "sheet__line" }, element("span", {}, name));
  return element("p", { class: "sheet__signature" }, element("strong", {}, role), line("Name"), line("Signature"), line("Date"));
}
