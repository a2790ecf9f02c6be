import { element } from "../basics/element.js";

/**
 * Show what each column was taken for, to be confirmed or corrected.
 *
 * Inputs: where; the mapping of a reply; the meanings to choose from; what a person chose so far,
 * by column, which a change is added to; what to do to judge anew.
 */
export function showMapping(place, mapping, meanings, chosen, judgeAgain) {
  if (mapping.length === 0) {
    place.replaceChildren();
    return;
  }
  const again = element("button", { type: "button", class: "action", hidden: true }, "Judge with these meanings");
  again.addEventListener("click", judgeAgain);
  const rows = mapping.map((column) => rowOf(column, meanings, (means) => {
    chosen.set(String(column.column), means);
    again.hidden = false;
  }));
  const head = ["Column", "Heading", "Taken for"].map((name) => element("th", { scope: "col" }, name));
  const table = element("table", { class: "schedule__mapping" }, element("thead", {}, element("tr", {}, ...head)), element("tbody", {}, ...rows));
  place.replaceChildren(
    element("h2", {}, "What the columns were taken for"),
    element("p", {}, "Correct what is wrong; nothing is judged by a column that is not understood."),
    table,
    element("p", {}, again),
  );
}

function rowOf({ column, heading, means, used, asks, answers }, meanings, choose) {
  const now = used ? means : asks ? "asked about" : "not used";
  const others = [...answers, ...meanings].filter((one) => one !== now);
  const select = element(
    "select",
    { "aria-label": `Column ${column}${heading ? `, ${heading}` : ""}` },
    element("option", { value: "", selected: true }, now),
    ...others.map((one) => element("option", { value: one }, one)),
  );
  select.addEventListener("change", () => select.value && choose(select.value));
  return element(
    "tr",
    {},
    element("th", { scope: "row" }, String(column)),
    element("td", {}, heading),
    element("td", {}, select, asks ? element("p", { class: "field__hint" }, asks) : ""),
  );
}
