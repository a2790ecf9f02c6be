import { inShort, isAsGiven } from "./unknown-values.js";
import { say } from "../basics/element.js";
import { valueOf } from "./fields.js";

/** The fields that stand in an entry, folded away or not. */
export function fieldsIn(entry) {
  return [...entry.querySelectorAll("[data-field]")];
}

/** Say in a line what a folded entry holds, beside its leading field; tell whether it is anything. */
export function showInWords(entry) {
  const place = entry.querySelector("[data-in-words]");
  if (!place) {
    return false;
  }
  showName(entry);
  const folded = fieldsIn(entry).filter((field) => field.closest("[data-rest]"));
  const words = folded.map(inWords).filter(Boolean).join(" · ");
  say(place, words || place.dataset.ask);
  return words !== "";
}

// Heard alone, an entry or its button for removal tells by its own name which it is.
function showName(entry) {
  const name = inShort(valueOf(fieldsIn(entry).find((field) => !field.closest("[data-rest]"))));
  entry.querySelectorAll("[data-named]").forEach((place) => say(place, name ? `: ${name}` : ""));
}

function inWords(field) {
  const value = valueOf(field);
  if (isAsGiven(field)) {
    return labelled(field, inShort(value));
  }
  if (!value || value === (field.dataset.default ?? "")) {
    return "";
  }
  const option = field.querySelector("select")?.selectedOptions[0];
  const face = field.querySelector("input[type=radio]:checked + .button__face .button__name");
  if (option || face) {
    return chosen(field, (option ?? face).textContent.trim());
  }
  const { inputMode, type } = field.querySelector("input");
  const unit = field.querySelector(".field__unit")?.textContent ?? "";
  if (unit === "×") {
    return `×${value.replace(/^[x×]\s*|\s*[x×]$/gi, "")}`;
  }
  return inputMode === "decimal" || type === "date" ? withUnit(value, unit) : labelled(field, value);
}

// A choice says its name, then what it means; a name of a letter or two says little by itself.
function chosen(field, text) {
  const [name] = text.split(": ");
  return name.length > 2 ? text : labelled(field, name);
}

function labelled(field, value) {
  return `${field.querySelector("label, legend").textContent.trim().toLowerCase()} ${value}`;
}

function withUnit(value, unit) {
  return /^[\d.,]+$/.test(value) && unit ? `${value} ${unit}` : value;
}
