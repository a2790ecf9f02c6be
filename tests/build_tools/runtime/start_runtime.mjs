// Starts the prepared runtime under node and asks it the requests on standard input. Prints the
// replies, the names of the modules that the runtime carries in itself, of those that are loaded
// then, and the texts that had to be compiled on the way.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const ASK = `
import _imp, json, sys
import sitecustomize
compiled, compile_text = [], sitecustomize._compiled
sitecustomize._compiled = lambda text: compiled.append(text) or compile_text(text)
import checkers
replies = [checkers.run(slug, request) for slug, request in json.loads(requests)]
frozen = _imp._frozen_module_names()
loaded = list(sys.modules)
json.dumps({"replies": replies, "frozen": frozen, "loaded": loaded, "compiled": compiled})
`;

async function answer(folder, runtime, requests) {
  const { loadPyodide } = await import(pathToFileURL(`${runtime}pyodide.mjs`));
  const { wheel } = JSON.parse(readFileSync(`${folder}manifest.json`, "utf8"));
  const python = await loadPyodide({ indexURL: folder });
  python.unpackArchive(new Uint8Array(readFileSync(folder + wheel)), "wheel");
  python.globals.set("requests", requests);
  return python.runPython(ASK);
}

try {
  console.log(await answer(`${process.argv[2]}/`, `${process.argv[3]}/`, readFileSync(0, "utf8")));
} catch (error) {
  // Node would print the whole of the line that failed: half the runtime.
  console.error(error.message);
  process.exitCode = 1;
}
