import { element } from "../basics/element.js";
import { begun } from "../basics/capital.js";
import { soFarWord, toneOf } from "../basics/outcomes.js";
import { verdictShape } from "../basics/verdict-shapes.js";
import { OUTCOMES } from "../generated/words.js";

const AT_ONCE = 100; // rows on the screen before the reader asks for more
const PASSES = "pass";

/** Show the rows, those that need a person or all, so many at a time. */
export function showRows(place, rows, headings) {
  const list = element("ul", { class: "findings" });
  const more = element("button", { type: "button", class: "action" }, "Show more");
  const which = element(
    "select",
    { id: "schedule-which" },
    element("option", { value: "judged" }, "with a verdict"),
    element("option", { value: "open" }, "that need a person"),
    element("option", { value: "all" }, "all"),
  );
  const view = { rows, headings, list, more, shown: 0, which };
  which.addEventListener("change", () => begin(view));
  more.addEventListener("click", () => goOn(view));
  const label = element("label", { for: which.id }, "Rows");
  place.replaceChildren(element("h2", {}, "Every row"), element("p", { class: "log__field" }, label, " ", which), list, element("p", {}, more));
  begin(view);
}

function begin(view) {
  view.list.replaceChildren();
  view.shown = 0;
  view.chosen = view.rows.filter((row) => isChosen(row, view.which.value));
  goOn(view);
}

function isChosen({ outcome, row }, which) {
  if (which === "open") {
    return outcome !== null && outcome !== PASSES && row !== "same device";
  }
  return which === "all" || outcome !== null;
}

function goOn({ list, more, chosen, headings, ...view }) {
  const next = chosen.slice(list.children.length, list.children.length + AT_ONCE);
  list.append(...next.map((row) => rowItem(row, headings)));
  more.hidden = list.children.length >= chosen.length;
  if (chosen.length === 0) {
    list.append(element("li", {}, view.which.value === "open" ? "No row needs a person." : "No row."));
  }
}

/** One row: its outcome in word and shape, why, what to do, and its cells as they were. */
export function rowItem(row, headings) {
  const soFar = row.outcome === PASSES && row.still_to_do.length > 0;
  const shown = { outcome: row.outcome, soFar };
  return element(
    "li",
    { class: "finding", ...toneOf(shown) },
    element(
      "p",
      { class: "finding__head" },
      row.outcome ? verdictShape(shown) : "",
      element("strong", { class: "finding__word" }, soFar ? soFarWord() : OUTCOMES[row.outcome] ?? row.row),
      " ",
      element("span", { class: "finding__about" }, begun(placeOf(row))),
    ),
    row.why ? element("p", { class: "finding__says" }, row.why) : "",
    row.do_next ? element("p", { class: "next" }, soFar ? row.do_next : `Next: ${row.do_next}`) : "",
    details("Where the limits come from", row.limits_from, row),
    details("As written", asWritten(row.cells, headings), row),
  );
}

/** What a row is called: its line, and its device. */
function placeOf({ line, device }) {
  return device ? `line ${line}: ${device}` : `line ${line}`;
}

function asWritten(cells, headings) {
  return cells
    .map((cell, place) => (cell.trim() ? `${headings[place] ?? ""} ${cell}`.trim() : ""))
    .filter(Boolean)
    .join(" · ");
}

// Every row has the same two: heard alone, each must tell whose it is.
function details(title, text, row) {
  const whose = element("span", { class: "unseen" }, `: ${placeOf(row)}`);
  return text ? element("details", { class: "sources" }, element("summary", {}, title, whose), element("p", {}, text)) : "";
}
