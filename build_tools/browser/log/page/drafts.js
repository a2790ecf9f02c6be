import { holdUnsaved } from "../../basics/unsaved-work.js";

/** What is typed on the log's page and not saved yet is held for the tab, and stands there again. */
export function holdTyped(page) {
  const before = holdUnsaved({ name: "log page", words: "what is typed in the log", state: () => typedOn(page) }, page.signal);
  if (before) {
    page.part("text").value = before.text;
    before.edits.forEach((edit) => openEdit(page, edit));
  }
}

function typedOn(page) {
  const { value: text } = page.part("text");
  const edits = [...page.part("list").querySelectorAll("[data-id] [data-edit]")].map(({ elements: { job, device, note }, parentElement }) =>
    ({ id: parentElement.closest("[data-id]").dataset.id, typed: [job.value, device.value, note.value] }));
  return text || edits.length ? { text, edits } : null;
}

function openEdit(page, { id, typed }) {
  const item = page.part("list").querySelector(`[data-id="${CSS.escape(id)}"]`);
  item?.addEventListener("toggle", () => {
    item.querySelector(".log__line button").click(); // the first one edits
    const { job, device, note } = item.querySelector("[data-edit]").elements;
    [job.value, device.value, note.value] = typed;
  }, { once: true });
  item && (item.open = true);
}
