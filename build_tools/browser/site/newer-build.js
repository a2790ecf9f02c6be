import { CORRECTS } from "../generated/corrections.js";
import { say } from "../basics/element.js";
import { buildName } from "../basics/days.js";
import { recall, remember } from "../basics/memory.js";

const NEWER = "newer build";

/** Remember what this device has learnt of a newer build, and show it. */
export function learnOf({ build, built, corrects = [] }) {
  remember(NEWER, { build, built, corrects });
  showOutdated();
}

/** Whether a build corrects verdicts that this one may still give. */
export function correctsMore({ corrects = [] }) {
  return corrects.some((day) => !CORRECTS.includes(day));
}

/** Say above the verdicts of this build that a newer one corrects verdicts, also without a network. */
export function showOutdated() {
  const newer = recall(NEWER);
  for (const place of document.querySelectorAll("[data-outdated]")) {
    const isOutdated = Boolean(newer) && correctsMore(newer);
    place.hidden = !isOutdated;
    say(place, isOutdated ? `A newer build of this site, of ${buildName(newer.build)}, corrects verdicts. Use it before you rely on a verdict here: open this site with a network, and choose “Use it now”.` : "");
  }
}
