import { asGiven, holdAsGiven, isAsGiven, letGo } from "./unknown-values.js";

/** One field of a form: what is typed, chosen or given in it, set, and marked. */

// Fields whose value was chosen or given, though it may be the one they start with.
const said = new WeakSet();

export function valueOf(field) {
  return isAsGiven(field) ? asGiven(field) : shownIn(field);
}

/** Whether a field says something of its own; what it starts with says nothing until it is chosen. */
export function saysSomething(field) {
  const value = valueOf(field);
  return value !== "" && (value !== (field.dataset.default ?? "") || said.has(field));
}

function shownIn(field) {
  const typed = field.querySelector("[data-typed]");
  if (typed && typed.value.trim()) {
    return typed.value.trim();
  }
  const hasButtons = field.querySelector("input[type=radio]");
  const chosen = field.querySelector("input[type=radio]:checked");
  return hasButtons ? (chosen?.value ?? "") : textOf(inputOf(field));
}

// A pasted sheet is taken as it is: its first cell may be empty.
function textOf(input) {
  return input.tagName === "TEXTAREA" && input.value.trim() ? input.value : input.value.trim();
}

/**
 * Set a field; an empty value sets it back to what it starts with.
 *
 * What its control cannot hold just so is held beside it: Python says what it is.
 */
export function setValue(field, value = "") {
  letGo(field);
  said[value === "" ? "delete" : "add"](field);
  const wanted = String(typeof value === "object" ? "" : value) || field.dataset.default || "";
  if (!setControl(field, wanted) || typeof value === "object") {
    holdAsGiven(field, value, () => setValue(field));
  }
}

/** Set what is shown; tell whether it says what was wanted. */
function setControl(field, wanted) {
  const radios = [...field.querySelectorAll("input[type=radio]")];
  if (radios.length > 0) {
    return setButtons(field, radios, wanted);
  }
  const input = inputOf(field);
  const match = [...(input.options ?? [])].find((option) => stands(option, wanted));
  input.value = match?.value ?? (input.type === "date" && !isDay(wanted) ? "" : wanted);
  return Boolean(match) || shownIn(field) === wanted;
}

// A browser complains of a day that is none, and shows nothing.
function isDay(text) {
  const day = new Date(/^\d{4}-\d\d-\d\d$/.test(text) ? text : NaN);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

function setButtons(field, radios, wanted) {
  const match = radios.find((radio) => stands(radio, wanted));
  for (const radio of radios) {
    radio.checked = radio === match;
  }
  const typed = field.querySelector("[data-typed]");
  if (typed) {
    typed.value = match ? "" : wanted;
  }
  return Boolean(match) || shownIn(field) === wanted;
}

// As Python reads a choice: its value in any case, and the further words for yes and no.
function stands({ value, dataset }, wanted) {
  const word = wanted.toLowerCase();
  return value.toLowerCase() === word || Boolean(word && dataset.also?.split(" ").includes(word));
}

/** The reader's own answer: a typed value unsets the choices beside it, and the other way round. */
export function keepOneAnswer(field, changed) {
  letGo(field);
  said.add(field);
  const typed = field.querySelector("[data-typed]");
  if (!typed) {
    return;
  }
  if (changed.type === "radio") {
    typed.value = "";
  } else if (changed === typed) {
    const radios = [...field.querySelectorAll("input[type=radio]")];
    const standing = typed.value.trim() ? "" : field.dataset.default;
    radios.forEach((radio) => { radio.checked = radio.value === standing; });
  }
}

/** A value that names its unit stands alone; beside a bare number the field's own unit stands. */
export function showUnits(form) {
  for (const unit of form.querySelectorAll(".field__unit")) {
    unit.toggleAttribute("data-named", /\p{L}/u.test(unit.previousElementSibling.value));
  }
}

/** Mark a field as wrong, with the reason, or as right again with an empty one. */
export function mark(field, problem) {
  const place = [...field.querySelectorAll("[data-problem]")].find((one) => ownerOf(one) === field);
  if (!place) {
    return false;
  }
  if (place.textContent !== problem) {
    place.textContent = problem;
    place.hidden = !problem;
  }
  for (const input of field.querySelectorAll("input, select, textarea")) {
    if (ownerOf(input) === field) {
      input.toggleAttribute("aria-invalid", false);
      if (problem) {
        input.setAttribute("aria-invalid", "true");
      }
    }
  }
  return true;
}

function ownerOf(inner) {
  return inner.closest("[data-field], [data-many]");
}

function inputOf(field) {
  return field.querySelector("input, select, textarea");
}
