import { element, say } from "../basics/element.js";

/** Show the case as it is noted, and what was done with it, as an instrument would show it. */
export function showReadings(page, { level }, { scene, device, task, readings }) {
  say(page.part("scene"), scene);
  say(page.part("device"), device);
  say(page.part("task"), task);
  page.part("readings").replaceChildren(...readings.map(item));
  for (const one of page.all("levels")) {
    one.hidden = !one.dataset.levels.split(" ").includes(level);
  }
}

function item({ done, shows }) {
  return element("li", {}, element("span", {}, done), " ", element("strong", { class: "practice__display" }, shows));
}
