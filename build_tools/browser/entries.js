/** Lists in a form: an entry is a copy of the list's template. */

let made = 0;

/** Add an empty entry at the end of a list, and give it back. */
export function addEntry(list) {
  const template = list.querySelector(":scope > template");
  const copy = document.createElement("template");
  // Ids and radio groups carry the list's key: each entry gets a number never used before.
  made += 1;
  const { key } = list.dataset;
  copy.innerHTML = template.innerHTML.replaceAll(`${key}[#]`, `${key}[${made}]`);
  const entry = copy.content.querySelector("[data-entry]");
  list.querySelector(":scope > [data-entries]").append(entry);
  renumber(list);
  return entry;
}

/** Take an entry away; the last one is emptied by whoever asks, not taken. */
export function removeEntry(entry) {
  const list = entry.closest("[data-many]");
  entry.remove();
  renumber(list);
}

/** Take all entries of a list away. */
export function removeEntries(list) {
  list.querySelector(":scope > [data-entries]").replaceChildren();
}

function renumber(list) {
  const entries = list.querySelector(":scope > [data-entries]").children;
  [...entries].forEach((entry, place) => {
    for (const number of entry.querySelectorAll("[data-number]")) {
      if (number.closest("[data-entry]") === entry) {
        number.textContent = String(place + 1);
      }
    }
  });
  list.querySelector(":scope > [data-add]").disabled = entries.length >= Number(list.dataset.most);
}
