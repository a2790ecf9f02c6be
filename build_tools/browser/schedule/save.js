import { element } from "../basics/element.js";
import { handOver } from "../basics/download.js";

/** The outputs that are written while a schedule is judged; JSON is made of its rows. */
export const FORMS = ["csv", "html"];
const KINDS = {
  csv: { type: "text/csv;charset=utf-8", name: "Save as CSV" },
  html: { type: "text/html;charset=utf-8", name: "Save a page for print" },
  json: { type: "application/json", name: "Save as JSON" },
};

/** Make a button for each form of output of a run that has ended. */
export function saveButtons(run) {
  return Object.entries(KINDS).map(([form, { name }]) => {
    const button = element("button", { type: "button", class: "action", "data-save": form }, name);
    button.addEventListener("click", () => save(run, form));
    return button;
  });
}

function save(run, form) {
  const text = new Blob(form === "json" ? [JSON.stringify({ ...run.reply, rows: run.rows })] : whole(run, form));
  const bare = run.name.replace(/\.[^.]*$/, "");
  handOver({ name: `${bare}-judged.${form}`, type: KINDS[form].type, text });
}

function whole({ frames, pieces }, form) {
  const [head, tail] = frames[form];
  return [head, ...pieces[form], tail];
}
