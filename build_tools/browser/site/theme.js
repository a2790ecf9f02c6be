import { follow } from "../client/client.js";

const WAITING = "script[data-later]";
const COMING = "theme-coming"; // as in search.css
const LATEST = 3000; // milliseconds
const TOUCHED = ["pointerdown", "keydown", "focusin"];

let coming = null;

/**
 * Resolves when the theme's own script has run; starts it where the page left that to us.
 *
 * A page with a checker does: see theme_start.py.
 */
export function theme() {
  coming ??= run(document.querySelector(WAITING));
  return coming;
}

/**
 * Start the theme's script once a verdict stands, or cannot come; or when it is wanted, or late.
 *
 * `then` is called when it has run.
 */
export function startThemeInTime(then) {
  let asked = false;
  const start = () => {
    if (!asked) {
      asked = true;
      theme().then(then, noTheme);
    }
  };
  const soon = () => requestAnimationFrame(() => setTimeout(start)); // after it is painted
  if (!document.querySelector(WAITING)) {
    start();
    return;
  }
  document.documentElement.classList.add(COMING);
  follow(({ answered, stage }) => (answered || stage === "failed") && soon());
  TOUCHED.forEach((kind) => addEventListener(kind, start, { once: true, capture: true }));
  setTimeout(start, LATEST);
}

// The page still reads and judges: but what opens the search would open nothing.
function noTheme() {
  document.documentElement.classList.remove(COMING);
}

function run(waiting) {
  if (!waiting) {
    return Promise.resolve();
  }
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.addEventListener("load", resolve);
    script.addEventListener("error", reject);
    script.integrity = waiting.integrity;
    script.src = waiting.src;
    document.body.append(script);
  });
}
