import { drawn } from "./element.js";

// Each outcome has a shape of its own, so that colour is never all that tells them apart.
const PATHS = {
  pass: ["M12 1a11 11 0 1 0 0 22 11 11 0 0 0 0-22z", "M6.5 12.5l3.8 3.8 7.2-8.2"],
  "so-far": ["M12 1a11 11 0 1 0 11 11H12z", "M5.5 13l3.6 3.9 6.3-1.6"],
  fail: ["M2 2h20v20H2z", "M7 7l10 10M17 7L7 17"],
  borderline: ["M12 1.5L23.5 22H.5z", "M12 9v6M12 17.8v1.4"],
  "cannot-say": ["M6.3 1.6h11.4L23.6 12l-5.9 10.4H6.3L.4 12z", "M9 9.4a3 3 0 1 1 4.9 2.3c-1.2.9-1.9 1.4-1.9 2.8M12 17.6v.1"],
  plan: ["M4 1h16v22H4z", "M8 7h8M8 12h8M8 17h5"],
  unfinished: ["M1 6h22v12H1z", "M6 12h.1M12 12h.1M18 12h.1"],
};

/** Draw the shape of a verdict: that of its outcome, or of a pass so far. */
export function verdictShape({ outcome, soFar }) {
  return shapeOf(soFar ? "so-far" : outcome);
}

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
