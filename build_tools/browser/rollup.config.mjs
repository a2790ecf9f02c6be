import { relative } from "node:path";

/**
 * A script that is fetched late is served under the folders it lies in and its own name, each word
 * said once, and the hash of what it holds.
 */
function lateName({ moduleIds }) {
  const place = relative(process.cwd(), moduleIds.at(-1)).replace(/\.js$/, "");
  return `${[...new Set(place.split(/[\\/]/))].join("-")}-[hash].js`;
}

export default { output: { entryFileNames: "[name].js", chunkFileNames: lateName } };
