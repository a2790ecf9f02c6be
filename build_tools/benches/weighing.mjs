// Starts the prepared runtime under node and asks it the requests on standard input, one by one.
// Prints how long each took [ms].
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

async function times(folder, runtime, requests) {
  const { loadPyodide } = await import(pathToFileURL(`${runtime}pyodide.mjs`));
  const { wheel } = JSON.parse(readFileSync(`${folder}manifest.json`, "utf8"));
  const python = await loadPyodide({ indexURL: folder });
  python.unpackArchive(new Uint8Array(readFileSync(folder + wheel)), "wheel");
  const answer = python.runPython("import checkers; checkers.answer");
  return requests.map(([slug, request]) => {
    const start = performance.now();
    const reply = JSON.parse(answer(slug, JSON.stringify(request)));
    if (reply.kind !== "result") {
      throw new Error(`${slug} gave no result: ${JSON.stringify(reply)}`);
    }
    return performance.now() - start;
  });
}

try {
  console.log(JSON.stringify(await times(`${process.argv[2]}/`, `${process.argv[3]}/`, JSON.parse(readFileSync(0, "utf8")))));
} catch (error) {
  // Node would print the whole of the line that failed: half the runtime.
  console.error(error.message);
  process.exitCode = 1;
}
