import { drawn, element } from "../basics/element.js";
import { shapeOf } from "../basics/verdict-shapes.js";

const WIDTH = 360;
const LINE = 17; // height of a line of text
const GAP = 12; // between two rows
const STEP = 21; // to the right for each step down: three characters, as the lines are cut for
const SIGN = 20; // width of an outcome's shape
const ROOM = 170; // least width that a row's text has

/**
 * An arrangement of devices as a drawing, with the same as nested lists for who cannot see it.
 *
 * Inputs: the rows of a reply's answer, from the supply downward; none gives nothing.
 */
export function treeParts(rows = []) {
  if (rows.length === 0) {
    return [];
  }
  const figure = element("figure", { class: "tree" }, picture(rows), ...inWords(rows, null));
  return [element("h2", {}, "The arrangement"), figure];
}

function picture(rows) {
  const last = rows.at(-1);
  const height = yOf(last, rows.length - 1) + last.lines.length * LINE;
  const width = Math.max(WIDTH, ...rows.map((row) => textX(row) + ROOM));
  return drawn(
    "svg",
    { viewBox: `0 0 ${width} ${height}`, "aria-hidden": "true", focusable: "false" },
    ...rows.map((row, place) => joint(rows, row, place)),
    ...rows.flatMap((row, place) => [sign(row, place), text(row, place)]),
  );
}

function joint(rows, row, place) {
  if (row.above === null) {
    return "";
  }
  const from = rows[row.above];
  const x = signX(from) + SIGN / 2;
  const start = yOf(from, row.above) + SIGN;
  const path = `M${x} ${start}V${yOf(row, place) + SIGN / 2}H${signX(row)}`;
  return drawn("path", { d: path, class: "tree__joint" });
}

function sign(row, place) {
  const [x, y] = [signX(row), yOf(row, place)];
  if (row.kind === "load") {
    return drawn("circle", { cx: x + SIGN / 2, cy: y + SIGN / 2, r: 5, class: "tree__load" });
  }
  const shape = shapeOf(row.verdict);
  const attributes = { x, y, width: SIGN, height: SIGN, "data-outcome": row.verdict };
  Object.entries(attributes).forEach(([name, value]) => shape.setAttribute(name, value));
  return shape;
}

function text(row, place) {
  const lines = row.lines.map((words, line) =>
    drawn("tspan", { x: textX(row), y: yOf(row, place) + 14 + line * LINE }, words));
  return drawn("text", { class: `tree__text tree__text--${row.kind}` }, ...lines);
}

function yOf(row, place) {
  return row.top * LINE + place * GAP;
}

function signX(row) {
  return row.depth * STEP;
}

function textX(row) {
  return signX(row) + SIGN + 7;
}

/** The rows that hang on one, as a list, each with those that hang on it. */
function inWords(rows, above) {
  const here = rows.map((row, place) => ({ row, place })).filter(({ row }) => row.above === above);
  if (here.length === 0) {
    return [];
  }
  const entries = here.map(({ row, place }) =>
    element("li", {}, row.lines.join(" "), ...inWords(rows, place)));
  return [element("ul", { class: above === null ? "unseen" : null }, ...entries)];
}
