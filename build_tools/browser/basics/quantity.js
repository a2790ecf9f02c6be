import { LARGER } from "../generated/words.js";

const DIGITS = 4; // that count

/** A number as a reader writes it, with a true minus. */
export function numberText(value) {
  return String(Number(value.toPrecision(DIGITS))).replace("-", "−");
}

/** A quantity with its unit, in the larger one where that is usual: 10 s, not 10000 ms. */
export function quantityText(value, unit) {
  const [larger, from] = LARGER[unit] ?? [unit, Infinity];
  return Math.abs(value) >= from
    ? `${numberText(value / 1000)} ${larger}`
    : `${numberText(value)} ${unit}`.trim();
}
