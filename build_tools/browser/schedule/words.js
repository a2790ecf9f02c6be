import { element } from "../basics/element.js";

/** A list of sentences. */
export function sentences(all) {
  return element("ul", {}, ...all.map((one) => element("li", {}, one)));
}

/** How far a run is, in words. */
export function soFar(rows, counts) {
  const bad = ["fail", "borderline", "cannot-say"].filter((outcome) => counts[outcome]);
  const said = bad.map((outcome) => `${counts[outcome]} ${{ fail: "fail", borderline: "borderline", "cannot-say": "cannot be judged" }[outcome]}`);
  return `${rows} rows so far${said.length ? `: ${said.join(", ")}` : ""}.`;
}
