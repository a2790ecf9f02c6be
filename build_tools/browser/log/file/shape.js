import { MOST } from "../entry/entry.js";
import { OUTCOMES } from "../../generated/words.js";

const text = (most) => (value) => typeof value === "string" && value.length <= 2 * most;
const like = (pattern) => (value) => typeof value === "string" && pattern.test(value);
const orNothing = (shape) => (value) => value === null || fault(shape, value, "") === null;
const moment = (value) =>
  like(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/)(value) && !Number.isNaN(Date.parse(value));
const day = (value) => like(/^\d{4}-\d\d-\d\d$/)(value) && !Number.isNaN(Date.parse(value));
const outcome = (value) => typeof value === "string" && Object.hasOwn(OUTCOMES, value);
const words = text(100_000);
const slug = like(/^[a-z][a-z0-9-]{0,40}$/);

const source = { document: words, edition: words, clause: words, evidence: words };
const finding = {
  about: words,
  outcome,
  says: words,
  judges: words,
  "measured?": words,
  "measured_as?": words,
  "limit?": words,
  "do_next?": words,
  "device?": words,
  "sources?": [source],
};

const reply = {
  kind: (value) => value === "result",
  checker: slug,
  code: words,
  on: day,
  outcome,
  findings: [finding],
  "edition?": orNothing(words),
  "answer?": (value) => typeof value === "object" && value !== null && !Array.isArray(value),
  "explanations?": [{ name: words, probability: (value) => value >= 0 && value <= 1, "for?": [words], "against?": [words], "do_next?": words }],
  "next_test?": orNothing({ test: words, why: words }),
  "still_to_do?": [{ test: words, code: words, clause: words, words }],
  "cautions?": [words],
  "local_note?": words,
  "assumed?": [{ field: words, value: words, says: words }],
};

const entry = {
  id: like(/^[0-9a-f]{32}$/),
  job: text(MOST.job),
  device: text(MOST.device),
  note: text(MOST.note),
  kept: moment,
  changed: moment,
  checker: slug,
  build: text(200),
  request: (value) => typeof value === "object" && value !== null && !Array.isArray(value),
  reply,
};

const WORST_FIRST = ["fail", "borderline", "cannot-say", "pass"];

/** What is wrong with an entry from a file, or null; names the field. */
export function problemOf(value) {
  const wrong = fault(entry, value, "");
  if (wrong) {
    return wrong;
  }
  const strange = Object.keys(value).find((name) => !Object.hasOwn(entry, name));
  if (strange) {
    return `${strange} is no field of an entry`;
  }
  if (value.reply.checker !== value.checker) {
    return "the verdict is another checker's than the entry says";
  }
  return contradiction(value.reply);
}

// The whole is the worst of its findings: a file must not make a pass of a failure.
function contradiction({ outcome: whole, findings }) {
  const found = WORST_FIRST.find((one) => findings.some((finding) => finding.outcome === one));
  return (found ?? "cannot-say") === whole ? null : "the verdict does not follow from its findings";
}

/** The first place where a value has not its shape, or null. */
function fault(shape, value, path) {
  if (typeof shape === "function") {
    return shape(value) ? null : `${path || "the entry"} is missing or not as it must be`;
  }
  if (Array.isArray(shape)) {
    return Array.isArray(value)
      ? first(value.map((one, place) => () => fault(shape[0], one, `${path}[${place}]`)))
      : `${path} is not a list`;
  }
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return `${path || "the entry"} is not as it must be`;
  }
  return first(Object.entries(shape).map(([key, inner]) => () => member(key, inner, value, path)));
}

function member(key, shape, value, path) {
  const name = key.replace("?", "");
  const there = Object.hasOwn(value, name);
  if (!there && key !== name) {
    return null;
  }
  return fault(shape, there ? value[name] : undefined, path ? `${path}.${name}` : name);
}

function first(tries) {
  for (const attempt of tries) {
    const found = attempt();
    if (found) {
      return found;
    }
  }
  return null;
}
