import { drawn, element } from "./element.js";

const WIDTH = 360;
const HEIGHT = 200;
const LEFT = 44;
const BELOW = 24;
const ABOVE = 10;

/**
 * A line through points as a drawing, with its figures in words and as a table for who
 * cannot see it.
 *
 * Inputs: a name; the points, as [x, y] or as objects with two numbers.
 */
export function plot(name, points) {
  const pairs = points.map(pairOf);
  const [xs, ys] = [pairs.map(([x]) => x), pairs.map(([, y]) => y)];
  const across = scale(Math.min(...xs), Math.max(...xs), LEFT, WIDTH - 6);
  const up = scale(Math.min(0, ...ys), Math.max(0, ...ys), HEIGHT - BELOW, ABOVE);
  const said = `${name}: from ${round(Math.min(...ys))} to ${round(Math.max(...ys))}`;
  return element("figure", { class: "plot" }, picture(said, pairs, across, up), caption(said, points[0]));
}

function picture(said, pairs, across, up) {
  const path = pairs.map(([x, y], place) => `${place ? "L" : "M"}${round(across.at(x))} ${round(up.at(y))}`);
  return drawn(
    "svg",
    { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "img", "aria-label": said },
    ...up.marks.flatMap((mark) => level(mark, up)),
    ...across.marks.map((mark) => label(round(mark), across.at(mark), HEIGHT - 6, "middle")),
    drawn("path", { d: path.join(""), class: "plot__line" }),
  );
}

function level(mark, up) {
  const y = round(up.at(mark));
  return [
    drawn("path", { d: `M${LEFT} ${y}H${WIDTH - 6}`, class: mark === 0 ? "plot__zero" : "plot__level" }),
    label(round(mark), LEFT - 6, y + 4, "end"),
  ];
}

function label(text, x, y, anchor) {
  return drawn("text", { x: round(x), y, "text-anchor": anchor, class: "plot__text" }, String(text));
}

function caption(said, first) {
  const names = Array.isArray(first) ? [] : Object.keys(first).map((name) => name.replaceAll("_", " "));
  const axes = names.length === 2 ? ` Across: ${names[0]}. Up: ${names[1]}.` : "";
  return element("figcaption", {}, `${said}.${axes}`);
}

function pairOf(point) {
  return (Array.isArray(point) ? point : Object.values(point)).map(Number);
}

/** A linear scale from values to places, with three to six round marks. */
function scale(low, high, from, to) {
  const span = high - low || 1;
  const step = stepFor(span);
  const marks = [];
  for (let mark = Math.ceil(low / step) * step; mark <= high + step / 1e6; mark += step) {
    marks.push(Math.abs(mark) < step / 1e6 ? 0 : mark);
  }
  return { at: (value) => from + ((value - low) / span) * (to - from), marks };
}

function stepFor(span) {
  const power = 10 ** Math.floor(Math.log10(span));
  return [0.2, 0.5, 1, 2].map((one) => one * power).find((step) => span / step <= 6);
}

function round(value) {
  return Number(value.toPrecision(4));
}
