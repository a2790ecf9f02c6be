import { drawn, element } from "../basics/element.js";
import { bandArea, bandEnds, bars, crosses, legendOf } from "./plot-band.js";
import { numberText } from "../basics/quantity.js";

const WIDTH = 360;
const HEIGHT = 200;
const LEFT = 44;
const RIGHT = WIDTH - 10;
const BELOW = 24;
const ABOVE = 10;
const MOST_TURNS = 40; // as many ups and downs as a phone shows apart

/**
 * Pairs of numbers as a drawing, with the words for who cannot see it.
 *
 * Inputs: the pairs, as [x, y]; what the drawing is called, and what stands across and up;
 * `stems` draws a line for each pair, not one line through all; `band` is [x, low, high] about
 * the line, `known` the pairs that somebody measured, `declared` those that a standard sets.
 */
export function plot(all, { title, across, up, stems = false }, { band = [], known = [], declared = [] } = {}) {
  const pairs = stems ? all : toBeSeen(all);
  const xs = [...pairs, ...known, ...declared].map(([x]) => x);
  const ys = [...pairs.map(([, y]) => y), ...[...known, ...declared].map(([, y]) => y), ...band.map(([, , high]) => high)];
  const along = scale(Math.min(...xs), Math.max(...xs), LEFT, RIGHT);
  const upwards = scale(Math.min(0, ...ys), Math.max(0, ...ys), HEIGHT - BELOW, ABOVE);
  const spans = `across, ${across}: ${spanOf(xs)}; up, ${up}: ${spanOf(ys)}`;
  const parts = [
    ...bandArea(band, along, upwards),
    drawn("path", { d: (stems ? stemsOf : lineOf)(pairs, along, upwards), class: "plot__line" }),
    ...bandEnds(band, along, upwards, lineOf),
    ...crosses(known, along, upwards),
    ...bars(declared, along, upwards),
  ];
  return element(
    "figure",
    { class: "plot" },
    element("figcaption", {}, element("strong", {}, title), `. Across: ${across}. Up: ${up}.`),
    picture(`${title}; ${spans}`, along, upwards, parts),
    legendOf(band, known, declared),
  );
}

/** A curve up to where it has turned so often that more turns would run into one another. */
function toBeSeen(pairs) {
  const rises = pairs.slice(1).map(([, y], place) => Math.sign(y - pairs[place][1]));
  const turns = rises.flatMap((rise, place) => (place && rise * rises[place - 1] < 0 ? [place] : []));
  return turns.length > MOST_TURNS ? pairs.slice(0, turns[MOST_TURNS] + 1) : pairs;
}

function picture(said, along, upwards, parts) {
  return drawn(
    "svg",
    { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "img", "aria-label": said },
    ...upwards.marks.flatMap((mark) => level(mark, upwards)),
    ...along.marks.map((mark) => label(numberText(mark), along.at(mark), HEIGHT - 6, "middle")),
    ...parts,
  );
}

function lineOf(pairs, along, upwards) {
  return pairs
    .map(([x, y], place) => `${place ? "L" : "M"}${round(along.at(x))} ${round(upwards.at(y))}`)
    .join("");
}

function stemsOf(pairs, along, upwards) {
  const ground = round(upwards.at(0));
  return pairs.map(([x, y]) => `M${round(along.at(x))} ${ground}V${round(upwards.at(y))}`).join("");
}

function level(mark, upwards) {
  const y = round(upwards.at(mark));
  return [
    drawn("path", { d: `M${LEFT} ${y}H${RIGHT}`, class: mark === 0 ? "plot__zero" : "plot__level" }),
    label(numberText(mark), LEFT - 6, y + 4, "end"),
  ];
}

function label(text, x, y, anchor) {
  return drawn("text", { x: round(x), y, "text-anchor": anchor, class: "plot__text" }, text);
}

function spanOf(values) {
  return `${numberText(Math.min(...values))} to ${numberText(Math.max(...values))}`;
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
