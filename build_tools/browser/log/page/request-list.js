import { element } from "../../basics/element.js";
import { LABELS } from "../../generated/input-labels.js";
import { inWords } from "../entry/words.js";

/** What was typed, by the words of the form it was typed into: groups and entries stand apart. */
export function givenList(checker, request) {
  const lines = [...given(LABELS[checker] ?? {}, request, "", "")];
  const groups = Map.groupBy ? Map.groupBy(lines, ({ group }) => group) : grouped(lines);
  return element("dl", { class: "sheet__given" }, ...[...groups].flatMap(([group, list]) => [
    element("dt", {}, group || "In general"),
    element("dd", {}, list.map(({ name, value }) => `${name}: ${value}`).join("; ")),
  ]));
}

function grouped(lines) {
  const groups = new Map();
  for (const line of lines) {
    groups.set(line.group, [...(groups.get(line.group) ?? []), line]);
  }
  return groups;
}

// Labels stand by path, with [] for the number of an entry: readings[].value.
function* given(labels, value, path, group) {
  for (const [name, inner] of Object.entries(value)) {
    const here = path ? `${path}.${name}` : name;
    const { label = inWords(name), choices = {} } = labels[here] ?? {};
    if (Array.isArray(inner)) {
      for (const [place, one] of inner.entries()) {
        yield* entry(labels, one, `${here}[]`, `${group ? `${group}, ` : ""}${label} ${place + 1}`);
      }
    } else if (typeof inner === "object" && inner !== null) {
      yield* given(labels, inner, here, group ? `${group}, ${label}` : label);
    } else {
      yield { group, name: label, value: choices[inner] ?? String(inner) };
    }
  }
}

function* entry(labels, one, path, group) {
  if (typeof one === "object" && one !== null) {
    yield* given(labels, one, path, group);
  } else {
    yield { group, name: "Value", value: String(one) };
  }
}
