import { toFragment } from "../../basics/address.js";
import { element, say } from "../../basics/element.js";
import { judgeAgain } from "./judge-again.js";
import { editForm } from "./edit.js";
import { entryParts } from "./record-entry.js";
import { dayInWords, titleOf } from "../entry/words.js";
import { toDoLine, toneOf, verdictOf } from "../../basics/outcomes.js";
import { ROOT } from "../../shared/site-urls.js";
import { verdictShape } from "../../basics/verdict-shapes.js";
import { TITLES } from "../../generated/words.js";

/** One entry in the list: its verdict in a line; opened, all of it and what can be done with it. */
export function entryItem(page, entry) {
  const { reply } = entry;
  const verdict = verdictOf(reply);
  const item = element(
    "details",
    { class: "kept", "data-id": entry.id, ...toneOf(verdict) },
    element(
      "summary",
      { class: "kept__head" },
      verdictShape(verdict),
      element("span", { class: "kept__text" },
        element("strong", {}, verdict.word),
        ` ${entry.device || "Without a label"}`,
        ...toDoLine(verdict).map((line) => element("span", { class: "kept__what" }, line)),
        element("span", { class: "kept__what" }, `${titleOf(entry)}, ${dayInWords(reply.on)}`),
        element("span", { class: "kept__lost", hidden: true })),
    ),
  );
  item.addEventListener("toggle", () => {
    if (item.open && item.children.length === 1) {
      item.append(...inside(page, entry));
    }
  });
  return item;
}

/** Say on an entry that its verdict no longer stands; an empty text takes the mark away. */
export function markItem(item, standing) {
  const mark = item.querySelector(".kept__lost");
  mark.hidden = standing === "";
  say(mark, standing);
}

function inside(page, entry) {
  const place = element("div", { class: "kept__work" });
  const actions = [
    ["Edit", () => place.replaceChildren(...editForm(page, entry, place))],
    ["Judge again today", () => judgeAgain(page, entry, place)],
    ["Delete", () => remove(page, entry)],
  ].map(([name, action]) => button(name, entry, action));
  return [
    element("p", { class: "log__line" }, ...actions, ...openLink(entry)),
    place,
    element("div", { class: "kept__record" }, ...entryParts(entry, "h3")),
  ];
}

function button(name, entry, action) {
  const about = element("span", { class: "unseen" }, ` ${entry.device || "what has no label"}`);
  const made = element("button", { type: "button", class: "action" }, name, about);
  made.addEventListener("click", action);
  return made;
}

// A checker that this build has not is not linked to.
function openLink({ checker, request, reply }) {
  if (!TITLES[checker]) {
    return [];
  }
  const address = new URL(`checkers/${checker}/`, ROOT);
  address.hash = toFragment({ on: reply.on, ...request });
  return [element("a", { class: "action", href: address.href }, "Open in the checker")];
}

async function remove(page, entry) {
  const name = entry.device || "an entry";
  if (await page.change({ what: `deleted ${name}`, takes: [entry.id] })) {
    page.say(`Deleted ${name}. “Undo” brings it back for a day.`);
    page.part("undo").focus();
  }
}
