import { element } from "../basics/element.js";
import { showState } from "../reply/verdict.js";

/**
 * Bring a part of the page to life; where that fails, say so in its place, with a way on.
 *
 * Inputs: what mounts it, at once or later; its root. Result: what to call when its page goes.
 */
export function bringToLife(mount, root) {
  try {
    const ended = mount(root);
    return ended instanceof Promise ? later(ended, root) : ended;
  } catch (error) {
    return failed(root, error);
  }
}

function later(coming, root) {
  const ended = coming.catch((error) => failed(root, error));
  return () => ended.then((end) => end());
}

function failed(root, error) {
  console.warn(`A part of the page did not come to life: ${error}`);
  const words = location.hash
    ? "What this address holds could not be filled in. The address still has it. "
    : "This part of the page has a fault. Load the page again. ";
  const way = location.hash ? element("a", { href: location.pathname }, "Open it empty") : "";
  if (root.querySelector("[data-verdict]")) {
    showState(root, "unfinished", "Not running", "");
    root.querySelector("[data-detail]").replaceChildren(words, way);
  } else {
    root.prepend(element("p", { class: "keep__warning", role: "alert" }, words, way));
  }
  return () => {};
}
