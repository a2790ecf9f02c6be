import { ask } from "../client/client.js";
import { element } from "../basics/element.js";
import { read, showProblems, write } from "../form/form.js";
import { isNoAnswer } from "../basics/outcomes.js";
import { requestOf } from "./case.js";
import { answerPart, questionPart } from "./sheet-parts.js";
import { showCrash } from "../reply/verdict.js";

const USUAL = "10"; // questions, where their number is left out

/** Let a teacher make a sheet of questions with its answers apart, and print either or both. */
export function offerSheet(page) {
  const form = page.part("class-form");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    make(page, read(form).sheet || USUAL);
  }, { signal: page.signal });
  page.makeSheet = (count) => {
    page.part("class").open = true;
    write(form, { sheet: count });
    make(page, count);
  };
}

function make(page, count) {
  const { level, seed, code, on } = page.practised;
  const which = requestOf({ level, seed, code, on, actions: [] }, { sheet: count });
  ask(offerSheet, "practice", which, (reply) => {
    showProblems(page.part("class-form"), reply.errors ?? {});
    if (reply.kind === "result") {
      show(page, { level, seed, count, reply });
    } else if (isNoAnswer(reply)) {
      showCrash(page.root, reply);
    }
  });
}

function show(page, made) {
  const place = page.part("sheet");
  place.replaceChildren(controls(place), questionPart(page, made), answerPart(page, made));
  place.hidden = false;
  place.querySelector("button").focus();
  place.scrollIntoView();
}

function controls(place) {
  const print = (words, only) => button(words, () => {
    place.dataset.only = only; // what the print shows; the screen shows both
    globalThis.print();
  });
  return element(
    "p",
    { class: "log__line sheet__controls" },
    print("Print both", "both"),
    print("Print the questions", "questions"),
    print("Print the answers", "answers"),
    button("Close the sheet", () => {
      place.hidden = true;
      place.replaceChildren();
    }),
  );
}

function button(words, action) {
  const made = element("button", { type: "button", class: "action" }, words);
  made.addEventListener("click", action);
  return made;
}
