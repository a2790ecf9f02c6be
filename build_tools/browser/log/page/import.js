import { entriesFrom, entriesIn } from "../file/file.js";
import { Damaged } from "../file/damage.js";
import { compared } from "../file/merge.js";
import { counted } from "../entry/words.js";

/** Let the reader take a file or a copied text into the log. */
export function offerImport(page) {
  const { signal } = page;
  const file = page.part("file");
  file.addEventListener("change", async () => {
    const [chosen] = file.files;
    if (chosen) {
      await takeIn(page, chosen.name, async () => entriesIn(await chosen.arrayBuffer()));
      file.value = "";
    }
  }, { signal });
  page.part("take-text").addEventListener("click", async () => {
    const box = page.part("text");
    if (await takeIn(page, "the text", async () => entriesFrom(box.value))) {
      box.value = "";
    }
  }, { signal });
}

async function takeIn(page, name, read) {
  let entries = [];
  try {
    entries = await read();
  } catch (error) {
    const why = error instanceof Damaged ? error.message : `it could not be read (${error.message})`;
    page.say(`Nothing was taken in from ${name}. ${why}.`);
    return false;
  }
  const found = compared(page.entries, entries);
  const puts = [...found.fresh, ...found.newer];
  const what = `took in ${counted(puts.length, "entry", "entries")} from ${name}`;
  if (puts.length > 0 && !(await page.change({ what, puts }))) {
    return false;
  }
  page.say(`From ${name}: ${report(found)}.`);
  return true;
}

function report({ fresh, newer, older, same, strange }) {
  return [
    `${fresh.length} new`,
    `${same.length} here already`,
    newer.length && `${newer.length} with newer labels than here, which replace them`,
    older.length && `${older.length} with older labels than here, which stay as they are here`,
    strange.length && `${strange.length} under the id of another verdict, which stay as they are here`,
  ].filter(Boolean).join(", ");
}
