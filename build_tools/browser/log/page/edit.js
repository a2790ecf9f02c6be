import { element } from "../../basics/element.js";
import { MOST, relabelled } from "../entry/entry.js";

const FIELDS = { job: "Job", device: "Device", note: "Note" };

/** The form for an entry's labels. What was read and judged is not edited: it is judged anew. */
export function editForm(page, entry, place) {
  const form = element(
    "form",
    { class: "keep__form", autocomplete: "off", "aria-label": "Edit the labels", "data-edit": true },
    ...Object.keys(FIELDS).map((name) => field(name, entry)),
    element("p", { class: "log__line" },
      element("button", { class: "action" }, "Save"),
      element("button", { type: "button", class: "action", "data-leave": true }, "Leave as it was")),
  );
  form.addEventListener("submit", (event) => { event.preventDefault(); save(page, entry, form); });
  form.querySelector("[data-leave]").addEventListener("click", () => place.replaceChildren());
  setTimeout(() => form.elements.job.focus(), 0);
  return [form];
}

function field(name, entry) {
  const id = `edit-${entry.id}-${name}`;
  const input = element(name === "note" ? "textarea" : "input", { id, name, maxlength: MOST[name] });
  input.value = entry[name];
  return element("p", { class: "keep__field" }, element("label", { for: id }, FIELDS[name]), input);
}

async function save(page, entry, form) {
  const { job, device, note } = form.elements;
  const changed = relabelled(entry, { job: job.value, device: device.value, note: note.value });
  if (await page.change({ what: `changed the labels of ${changed.device || "an entry"}`, puts: [changed] })) {
    page.say("Saved.");
    page.root.querySelector(`[data-id="${entry.id}"] summary`)?.focus();
  }
}
