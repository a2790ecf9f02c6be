/** What a reply took where the request said nothing, as one sentence. */
export function assumedWords(all) {
  return `Taken where nothing was given: ${all.map((one) => one.says).join("; ")}.`;
}
