import { loadPyodide } from "./runtime/pyodide.js";
import { WHEEL } from "./question.js";

addEventListener("message", async ({ data }) => {
  const python = await loadPyodide();
  const wheel = await fetch(WHEEL);
  python.unpackArchive(await wheel.arrayBuffer(), "wheel");
  postMessage(python.pyimport("checkers").answer(data.slug, data.request));
});
