import { handOver } from "../../basics/download.js";
import { element } from "../../basics/element.js";

/** What a reader may keep, as it is typed now; equal texts are the same entry. */
export function typedIn({ checker, form: { elements: { job, device, note } } }) {
  return JSON.stringify([job.value, device.value, note.value, checker.request]);
}

/** The ways to carry a verdict off: as a file, or as text. */
export function waysOut({ way: { file, text } }) {
  const said = element("span", { class: "keep__text" });
  const save = button("Save it as a file", () => handOver(file));
  const copy = button("Copy it as text", async () => {
    try {
      await navigator.clipboard.writeText(text);
      said.textContent = "Copied.";
    } catch {
      said.textContent = text;
    }
  });
  return [save, copy, said];
}

function button(name, action) {
  const made = element("button", { type: "button", class: "action" }, name);
  made.addEventListener("click", action);
  return made;
}
