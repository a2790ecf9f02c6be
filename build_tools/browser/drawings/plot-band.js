import { drawn, element } from "../basics/element.js";

const APART = 9; // between the slanting lines of the hatching
const REACH = 4.5; // of an arm of a cross

/** The area between the ends of a band, told from its ground by hatching and not by colour. */
export function bandArea(band, along, upwards) {
  if (band.length === 0) {
    return [];
  }
  const forth = band.map(([x, , high]) => placed(x, high, along, upwards));
  const back = band.map(([x, low]) => placed(x, low, along, upwards)).reverse();
  const hatching = drawn("path", { d: `M0 0V${APART}`, class: "plot__hatch" });
  const pattern = { id: "plot-band", width: APART, height: APART, patternUnits: "userSpaceOnUse" };
  const outline = `M${[...forth, ...back].join("L")}Z`;
  return [
    drawn("defs", {}, drawn("pattern", { ...pattern, patternTransform: "rotate(45)" }, hatching)),
    drawn("path", { d: outline, class: "plot__band" }),
    drawn("path", { d: outline, fill: "url(#plot-band)" }),
  ];
}

/** The two ends of a band, dashed. */
export function bandEnds(band, along, upwards, lineOf) {
  return [1, 2].filter(() => band.length > 0).map((end) =>
    drawn("path", { d: lineOf(band.map((row) => [row[0], row[end]]), along, upwards), class: "plot__end" }));
}

/** What somebody measured, as crosses. */
export function crosses(known, along, upwards) {
  return known.map(([x, y]) => {
    const [left, top] = [along.at(x), upwards.at(y)].map((place) => place - REACH);
    const arm = 2 * REACH;
    return drawn("path", { d: `M${left} ${top}l${arm} ${arm}m0 -${arm}l-${arm} ${arm}`, class: "plot__known" });
  });
}

/** What is declared, and measured on nobody's device: bars with an arrow, for at most. */
export function bars(declared, along, upwards) {
  return declared.map(([x, y]) => {
    const [left, top] = [along.at(x) - REACH, upwards.at(y)];
    return drawn("path", { d: `M${left} ${top}h${2 * REACH}m-${REACH} 0v${2 * REACH}m-3 -3l3 3l3 -3`, class: "plot__known" });
  });
}

/** What the line, the hatched band, the crosses and the bars are. */
export function legendOf(band, known, declared) {
  if (band.length + known.length + declared.length === 0) {
    return "";
  }
  const rows = [
    ["plot__line", "M2 9H26", "what the model expects"],
    ...(band.length ? [["plot__end", "M2 4H26M2 14H26", "between the dashed lines, hatched: how far devices scatter"]] : []),
    ...(known.length ? [["plot__known", "M9 4l10 10m0 -10l-10 10", "a cross: measured on a device, in the list below"]] : []),
    ...(declared.length ? [["plot__known", "M9 4h10m-5 0v10m-3 -3l3 3l3 -3", "a bar with an arrow: at most so much, as declared for the type, not measured"]] : []),
  ];
  return element("ul", { class: "plot__legend" }, ...rows.map(([kind, d, words]) =>
    element("li", {}, drawn("svg", { viewBox: "0 0 28 18", "aria-hidden": "true" }, drawn("path", { d, class: kind })), ` ${words}`)));
}

function placed(x, y, along, upwards) {
  return `${along.at(x).toFixed(1)} ${upwards.at(y).toFixed(1)}`;
}
