import { reached } from "./refusable.js";

/** How each thing that the checkers need is seen to be there; the keys are those of browsers.toml. */
const SEEN = {
  "webassembly": () => WebAssembly,
  "webassembly-exceptions": () => WebAssembly.Tag,
  "own-and-at": () => Object.hasOwn && Array.prototype.at,
};

/** What this browser lacks of it, as a key; empty where it lacks nothing that can be seen so. */
export function lacking() {
  return Object.keys(SEEN).find((name) => !reached(SEEN[name])) ?? "";
}
