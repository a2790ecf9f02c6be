/** A day as people write it. */
export function dayOf(text) {
  return new Date(text).toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}
