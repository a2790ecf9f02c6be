import { element } from "../basics/element.js";
import { dayInWords } from "../log/entry/words.js";
import { shapeOf } from "../basics/verdict-shapes.js";
import { OUTCOMES } from "../generated/words.js";

const ASKED = { causes: "Cause", actions: "What to do" };

/** The questions, with room to answer: what was done and shown, and what may be chosen from. */
export function questionPart(page, made) {
  const { answer } = made.reply;
  const choices = Object.entries(ASKED).filter(([name]) => answer[name]);
  return element(
    "section",
    { class: "sheet__part", "data-part": "questions" },
    ...heading(page, made, "Questions"),
    element("p", { class: "sheet__signature sheet__signature--name" }, line("Name"), line("Date")),
    element("p", {}, answer.questions[0].task),
    ...choices.map(([name, words]) => choiceList(words, answer[name])),
    ...answer.questions.map((one) => question(one, choices.map(([, words]) => words))),
    cautions(made.reply),
  );
}

/** The answers, by the same numbers, each with its reason and the table it rests on. */
export function answerPart(page, made) {
  return element(
    "section",
    { class: "sheet__part", "data-part": "answers" },
    ...heading(page, made, "Answers"),
    ...made.reply.answer.answers.map(answerItem),
    cautions(made.reply),
  );
}

function heading(page, { level, seed, count, reply }, what) {
  const title = page.root.querySelector(`[data-inputs] input[value="${level}"] + * .button__note`).textContent;
  return [
    element("h2", { class: "sheet__title" }, `${what}. Level ${level}: ${title}`),
    element("p", { class: "sheet__about" },
      `Sheet ${seed}, ${count} questions. Limits: ${[reply.edition || reply.code, dayInWords(reply.on)].join(", ")}. Places, devices and readings are invented.`),
  ];
}

function choiceList(words, list) {
  return element("div", { class: "sheet__choices" },
    element("h3", {}, `${words}: one of these`),
    element("ul", {}, ...list.map((one) => element("li", {}, one))));
}

function question({ number, scene, device, readings }, asked) {
  const boxes = Object.values(OUTCOMES).map((word) => element("span", { class: "sheet__box" }, `☐ ${word}`));
  return element(
    "article",
    { class: "sheet__entry" },
    element("h3", { class: "sheet__head" }, `${number}. ${scene}`),
    element("p", { class: "sheet__about" }, device),
    element("ul", { class: "sheet__readings" }, ...readings.map((one) => element("li", {}, one))),
    element("p", { class: "sheet__boxes" }, ...boxes.flatMap((box) => [box, " "])),
    line("Because"),
    ...asked.map(line),
  );
}

function answerItem({ number, seed, limits, because, sources, cause, action }) {
  const more = [["Cause", cause], ["What to do", action]].filter(([, value]) => value);
  return element(
    "article",
    { class: "sheet__entry" },
    element("h3", { class: "sheet__head" },
      `${number}. `,
      element("span", { class: "sheet__verdict", "data-outcome": limits }, shapeOf(limits), ` ${OUTCOMES[limits]}`)),
    element("p", {}, because),
    ...more.map(([name, value]) => element("p", {}, element("strong", {}, `${name}: `), value)),
    element("p", { class: "sheet__about" }, [...sources, `To try it on the page: case ${seed}`].join("; ")),
  );
}

function line(name) {
  return element("p", { class: "sheet__line" }, name);
}

function cautions({ cautions: all }) {
  return element("section", { class: "sheet__end" },
    element("h3", {}, "Cautions"),
    element("ul", { class: "cautions" }, ...all.map((one) => element("li", {}, one))));
}
