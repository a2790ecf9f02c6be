/** One field of a form: what is typed or chosen in it, set, and marked. */

export function valueOf(field) {
  const typed = field.querySelector("[data-typed]");
  const chosen = field.querySelector("input[type=radio]:checked");
  if (typed && typed.value.trim()) {
    return typed.value.trim();
  }
  return chosen ? chosen.value : textOf(inputOf(field));
}

// A pasted sheet is taken as it is: its first cell may be empty.
function textOf(input) {
  return input.tagName === "TEXTAREA" && input.value.trim() ? input.value : input.value.trim();
}

/** Set a field; an empty value sets it back to what it starts with. */
export function setValue(field, value = "") {
  const wanted = String(value) || field.dataset.default || "";
  const typed = field.querySelector("[data-typed]");
  const radios = [...field.querySelectorAll("input[type=radio]")];
  if (radios.length === 0) {
    setInput(inputOf(field), wanted);
    return;
  }
  const match = radios.find((radio) => radio.value.toLowerCase() === wanted.toLowerCase());
  for (const radio of radios) {
    radio.checked = radio === match;
  }
  if (typed) {
    typed.value = match ? "" : wanted;
  }
}

// A select that lacks the value asked for would show nothing; better what it starts with.
function setInput(input, wanted) {
  input.value = wanted;
  if (input.value !== wanted && input.tagName === "SELECT") {
    const match = [...input.options].find((one) => one.value.toLowerCase() === wanted.toLowerCase());
    input.value = match ? match.value : input.closest("[data-field]").dataset.default;
  }
}

/** Typing a value of one's own unsets the choices beside it, and the other way round. */
export function keepOneAnswer(field, changed) {
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
