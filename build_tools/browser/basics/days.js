/** A day of the calendar, as 2026-12-01, as people write it: the same day wherever they are. */
export function dayOf(text) {
  return new Date(text).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });
}

/** A build by its day and the beginning of its sign, which tells two of one day apart. */
export function buildName(id) {
  return `${dayOf(id.slice(0, 10))} (${id.slice(11, 17)})`;
}
