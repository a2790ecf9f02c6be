import { element } from "../basics/element.js";
import { findingItem } from "./findings.js";
import { JUDGES } from "../generated/words.js";

const WORST_FIRST = ["fail", "borderline", "cannot-say", "pass"];

// What each place shows, so that the next verdict changes only what differs.
const shown = new WeakMap();

/**
 * Findings under what they judge, the one that decides first.
 *
 * A rule, a standard, fitness for DC and a working button are told apart, and none hides another.
 */
export function findingGroups(place, all) {
  const before = shown.get(place) ?? new Map();
  const now = new Map();
  const groups = Object.entries(JUDGES)
    .map(([judges, heading]) => ({ heading, group: worstFirst(all.filter((one) => one.judges === judges)) }))
    .filter(({ group }) => group.length > 0)
    .sort((one, other) => rank(one.group[0]) - rank(other.group[0]));
  const parts = groups.flatMap(({ heading, group }) => [
    element("h2", {}, heading),
    element("ul", { class: "findings" }, ...group.map((finding) => itemOf(finding, before, now))),
  ]);
  shown.set(place, now);
  return parts;
}

function itemOf(finding, before, now) {
  const key = keyOf(finding, now);
  const text = JSON.stringify(finding);
  const former = before.get(key);
  const item = former?.text === text ? former.item : findingItem(finding, former?.item);
  now.set(key, { text, item });
  return item;
}

function keyOf({ judges, device = "", about }, taken) {
  let key = `${judges} ${device} ${about}`;
  while (taken.has(key)) {
    key += " again";
  }
  return key;
}

function worstFirst(findings) {
  return findings.sort((one, other) => rank(one) - rank(other));
}

function rank({ outcome }) {
  return WORST_FIRST.indexOf(outcome);
}
