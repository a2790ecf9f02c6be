import { start } from "./client.js";

// A page's first script: the runtime does not wait for the page's text and its other scripts,
// nor they for the runtime.
if (document.querySelector("meta[name=has-checker]")) {
  start();
}
