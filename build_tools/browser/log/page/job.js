import { element } from "../../basics/element.js";
import { MOST, relabelled } from "../entry/entry.js";
import { counted } from "../entry/words.js";

/** What can be done with a whole job: rename it, delete it. */
export function offerJobActions(page) {
  const on = (name, action) => page.part(name).addEventListener("click", action, { signal: page.signal });
  on("rename-job", () => showRename(page));
  on("delete-job", () => deleteJob(page));
}

function showRename(page) {
  const place = page.part("job-work");
  const input = element("input", { id: "new-job-name", name: "job", maxlength: MOST.job });
  input.value = page.job.name;
  const form = element(
    "form",
    { class: "keep__form", autocomplete: "off" },
    element("p", { class: "keep__field" }, element("label", { for: "new-job-name" }, "New name of the job"), input),
    element("p", {}, element("button", { class: "action" }, "Rename")),
  );
  form.addEventListener("submit", (event) => { event.preventDefault(); rename(page, input.value); });
  place.replaceChildren(form);
  input.focus();
}

async function rename(page, name) {
  const puts = page.chosen().map((entry) => relabelled(entry, { ...entry, job: name }));
  const what = `renamed ${page.job.name || "the entries without a job"}`;
  if (await page.change({ what, puts })) {
    page.job = { name: puts[0]?.job ?? "" };
    page.part("job-work").replaceChildren();
    await page.refresh();
    page.say("Renamed.");
    page.part("job").focus();
  }
}

async function deleteJob(page) {
  const takes = page.chosen().map(({ id }) => id);
  const name = page.job.name || "the entries without a job";
  if (await page.change({ what: `deleted ${name}`, takes })) {
    page.say(`Deleted ${name} with ${counted(takes.length, "entry", "entries")}. “Undo” brings it back for a day.`);
    page.part("undo").focus();
  }
}
