import { mendCopy } from "./offline-copy.js";
import { element } from "../basics/element.js";
import { showState } from "../reply/verdict.js";

/**
 * A script that is fetched when it is needed, or just before: the one way to import one.
 *
 * Inputs: a function that imports it, so that the build finds its name. Result: a function that
 * gives it, fetched once; where it does not come, that rejects with the browser's error, and the
 * next call tries again.
 */
export function fetchedLater(fetchIt) {
  let coming = null;
  return () => {
    coming ??= fetchIt().catch((error) => {
      coming = null;
      mendCopy(); // it may be damaged there: then it is right when the page is loaded again
      throw error;
    });
    return coming;
  };
}

/** Why a script did not come, in words that follow a colon. */
export function whyNotFetched() {
  return `a part of this page did not arrive${navigator.onLine ? " as it was built, or is blocked" : ": there is no network"}`;
}

/** Say in a part of the page that its script did not come, with a way on. */
export function tellNotFetched(root) {
  const again = element("button", { type: "button", class: "action" }, "Load the page again");
  again.addEventListener("click", () => location.reload());
  const text = `This cannot run: ${whyNotFetched()}. What is kept on this device stays as it is. `;
  root.querySelector("[data-warning]")?.replaceChildren();
  root.querySelector("[data-verdict]") && showState(root, "unfinished", "Not running", "");
  root.prepend(element("p", { class: "keep__warning", role: "alert" }, text, again));
}
