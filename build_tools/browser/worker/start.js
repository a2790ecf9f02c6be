import { failureOf } from "../shared/failure.js";
import { compileKept } from "./machine-code.js";
import { restorePython, startPython } from "./python.js";
import { PROBE, RUNTIME } from "../generated/runtime.js";
import { fetchArchives, fetchMachineCode } from "./runtime-files.js";
import { forgetImage, readImage } from "./start-image.js";

const SHOWN = 80; // milliseconds between two messages of how much has come

/**
 * Start Python: from the image this browser keeps where there is one, else from its files.
 *
 * Inputs: the checker that is asked first; the length of the image that is kept [bytes], 0 where
 * none is or it is passed by; whether all is fetched anew; and who is told: {fetching} and {starting}, or {failed} or {refused} where it
 * does not start. Result: what `startPython` gives, or null.
 */
export async function begin({ slug = PROBE.slug, image = 0, fresh = false }, tell) {
  const how = { fresh, count: counter(tell) };
  const fetched = () => fetchMachineCode(how);
  const machineCode = image ? compileKept().catch(fetched) : fetched();
  machineCode.catch(() => {}); // told of where it is waited for
  const parts = { slug, machineCode, archives: () => fetchArchives(how) };
  return image ? restored(image, parts, tell) : started(parts, tell);
}

async function started({ slug, machineCode, archives }, tell) {
  try {
    const files = archives();
    Promise.all([machineCode, files]).then(() => tell({ starting: true }), () => {});
    return await startPython(slug, machineCode, files);
  } catch (error) {
    tell({ failed: failureOf(error) });
    return null;
  }
}

// The page remembers the length, where anybody may change it: no memory has some lengths.
async function restored(length, { slug, machineCode, archives }, tell) {
  try {
    return await restorePython(slug, machineCode, readImage(length), archives);
  } catch (error) {
    await forgetImage(error);
    tell({ refused: true });
    return null;
  }
}

// Often enough to be seen to move: each time the page writes it down.
function counter(tell) {
  const files = [RUNTIME.machine_code, ...RUNTIME.archives];
  const total = files.reduce((sum, file) => sum + file.bytes, 0);
  let done = 0;
  let toldAt = -Infinity;
  return (bytes) => {
    done += bytes;
    if (performance.now() - toldAt > SHOWN) {
      toldAt = performance.now();
      tell({ fetching: { done: Math.min(done, total), total } });
    }
  };
}
