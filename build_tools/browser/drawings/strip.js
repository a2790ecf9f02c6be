import { drawn, say } from "../basics/element.js";
import { quantityText } from "../basics/quantity.js";

const BEYOND = 1.35; // how far past the greater of limit and reading the scale goes
const WIDE = 24; // per cent of the width that a word in a zone needs, with letters of the usual size
const APART = 16; // per cent between two figures that stand beside each other
const NAMES = ["low", "high"];
const TALL = 3.5; // rem: the height that strip.css gives it
let made = 0;

/**
 * A reading on a scale, with the band that its limit allows: places, no rules.
 *
 * Inputs: a finding's `numbers`; the words that say the same to who cannot see it. All places are in
 * per cent, which every engine takes, so that it fits any width and grows with the reader's letters.
 */
export function stripOf(numbers, said) {
  const parts = newParts();
  const svg = drawn("svg", { class: "strip", role: "img", focusable: "false" }, ...order(parts));
  svg.parts = parts;
  updateStrip(svg, numbers, said);
  return svg;
}

/** Move a strip that is drawn already to other numbers. */
export function updateStrip(svg, numbers, said) {
  const { parts } = svg;
  const at = scaleOf(numbers);
  svg.setAttribute("aria-label", said);
  const [low, high] = [numbers.at_least ?? 0, numbers.at_most];
  const ends = { low: low > 0 ? at(low) : 0, high: high === null ? 100 : at(high) };
  zone(parts.below, 0, ends.low);
  zone(parts.allowed, ends.low, ends.high);
  zone(parts.above, ends.high, 100);
  limits(parts, numbers, ends);
  reading(parts, numbers, at, ends);
}

function newParts() {
  made += 1;
  const hatch = `strip-hatch-${made}`;
  return {
    hatch: drawn(
      "defs",
      {},
      drawn(
        "pattern",
        { id: hatch, width: 6, height: 6, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" },
        drawn("path", { d: "M0 0V6", class: "strip__hatch" }),
      ),
    ),
    below: newZone("too low", "strip__zone--out", hatch),
    allowed: newZone("allowed", "strip__zone--in"),
    above: newZone("too high", "strip__zone--out", hatch),
    low: newLimit(),
    high: newLimit(),
    zero: drawn("text", { class: "strip__text", x: "0.5%", y: down(3.35) }, "0"),
    span: drawn("line", { class: "strip__span", y1: down(1.85), y2: down(1.85) }),
    drop: drawn("line", { class: "strip__drop", y1: down(0.1), y2: down(1.85) }),
    mark: drawn("circle", { class: "strip__mark", cy: down(1.85) }),
    right: newArrow("M-9 -6L0 0L-9 6z"),
    left: newArrow("M9 -6L0 0L9 6z"),
  };
}

function order(parts) {
  const zones = [parts.below, parts.allowed, parts.above];
  const areas = zones.flatMap(({ area, lines }) => [area, lines]);
  const words = zones.map(({ word }) => word); // over the reading's line, else they cannot be read
  const ends = NAMES.flatMap((name) => Object.values(parts[name]));
  const { hatch, zero, span, drop, mark, right, left } = parts;
  return [hatch, ...areas, ...ends, zero, span, drop, ...words, mark, right, left].filter(Boolean);
}

function newZone(word, kind, hatch) {
  const box = { y: down(0.05), height: down(1.15) };
  return {
    area: drawn("rect", { class: `strip__zone ${kind}`, ...box }),
    lines: hatch ? drawn("rect", { fill: `url(#${hatch})`, ...box }) : null,
    word: drawn("text", { class: "strip__text strip__word", y: down(0.82), "text-anchor": "middle" }, word),
  };
}

function newLimit() {
  return {
    line: drawn("line", { class: "strip__limit", y1: down(0.05), y2: down(2.45) }),
    text: drawn("text", { class: "strip__text", y: down(3.35) }),
  };
}

function newArrow(d) {
  return drawn("svg", { class: "strip__arrow", y: down(1.85), overflow: "visible" }, drawn("path", { d }));
}

/** From so many rem below the upper edge to the place of an attribute. */
function down(rem) {
  return `${(100 * rem) / TALL}%`;
}

/** From a value to its place: from nought to somewhat beyond the limit and the reading. */
function scaleOf({ value, at_least: least, at_most: most }) {
  const end = BEYOND * Math.max(value ?? 0, most ?? least ?? 0) || 1;
  return (one) => 100 * Math.min(1, Math.max(0, one / end));
}

function zone({ area, lines, word }, from, to) {
  const width = to - from;
  for (const one of [area, lines].filter(Boolean)) {
    set(one, { x: from, width });
  }
  show(area, width > 0);
  show(word, width >= WIDE);
  set(word, { x: from + width / 2 });
  word.style.setProperty("--room", width);
}

function limits(parts, { at_least: low, at_most: high, unit }, ends) {
  const close = low > 0 && high !== null && ends.high - ends.low < APART;
  limit(parts.low, low > 0 ? low : null, unit, ends.low, close ? "end" : "middle");
  limit(parts.high, high, unit, ends.high, close ? "start" : "middle");
  show(parts.zero, Math.min(low > 0 ? ends.low : 100, high === null ? 100 : ends.high) > 12);
}

function limit({ line, text }, value, unit, place, anchor) {
  show(line, value !== null);
  show(text, value !== null);
  if (value !== null) {
    set(line, { x1: place, x2: place });
    set(text, { x: place });
    text.setAttribute("text-anchor", anchor);
    say(text, quantityText(value, unit));
  }
}

function reading(parts, { value, least, most }, at, ends) {
  const never = value === null;
  const place = never ? ends.high : at(value);
  const from = never ? place : least === null ? 0 : at(least);
  const to = never || most === null ? 100 : at(most);
  set(parts.span, { x1: from, x2: to });
  set(parts.drop, { x1: place, x2: place });
  set(parts.mark, { cx: place });
  show(parts.drop, !never);
  show(parts.mark, !never);
  show(parts.right, never || most === null);
  show(parts.left, !never && least === null);
  set(parts.right, { x: 100 });
  set(parts.left, { x: 0 });
}

function set(node, places) {
  for (const [name, value] of Object.entries(places)) {
    const text = `${Math.round(value * 100) / 100}%`;
    if (node.getAttribute(name) !== text) {
      node.setAttribute(name, text);
    }
  }
}

function show(node, shown) {
  node.toggleAttribute("display", false);
  if (!shown) {
    node.setAttribute("display", "none");
  }
}
