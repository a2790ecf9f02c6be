import { drawn } from "./element.js";

// Each outcome has a shape of its own, so that colour is never all that tells them apart.
const PATHS = {
  pass: ["M12 1a11 11 0 1 0 0 22 11 11 0 0 0 0-22z", "M6.5 12.5l3.8 3.8 7.2-8.2"],
  fail: ["M2 2h20v20H2z", "M7 7l10 10M17 7L7 17"],
  borderline: ["M12 1.5L23.5 22H.5z", "M12 9v6M12 17.8v1.4"],
  "cannot-say": ["M12 .5L23.5 12 12 23.5.5 12z", "M9.3 9.6a2.8 2.8 0 1 1 4 2.6c-.9.5-1.3 1-1.3 2M12 16.4v1.3"],
  unfinished: ["M1 6h22v12H1z", "M6 12h.1M12 12h.1M18 12h.1"],
};

/** Draw the shape of an outcome; it is decoration, the word beside it says the same. */
export function shapeOf(outcome) {
  const [body, sign] = PATHS[outcome] ?? PATHS.unfinished;
  return drawn(
    "svg",
    { viewBox: "0 0 24 24", class: `shape shape--${outcome}`, "aria-hidden": "true", focusable: "false" },
    drawn("path", { d: body, class: "shape__body" }),
    drawn("path", { d: sign, class: "shape__sign" }),
  );
}
