import { restorePython, startPython } from "./python.js";
import { PROBE, RUNTIME } from "./runtime.js";
import { fetchArchives, fetchMachineCode } from "./runtime-files.js";
import { findImage, forgetImage } from "./start-image.js";

/**
 * Start Python: from the image this browser keeps where there is one, else from its files.
 *
 * Inputs: the checker that is asked first; whether the image is passed by; whether all is
 * fetched anew; and who is told: {fetching} and {starting}, or {failed} or {refused} where it
 * does not start. Result: what `startPython` gives, or null.
 */
export async function begin({ slug = PROBE.slug, plain = false, fresh = false }, tell) {
  const how = { fresh, count: counter(tell) };
  const machineCode = fetchMachineCode(how);
  machineCode.catch(() => {}); // told of where it is waited for
  const contents = plain || fresh ? null : await findImage();
  const parts = { slug, machineCode, archives: () => fetchArchives(how) };
  return contents ? restored(contents, parts, tell) : started(parts, tell);
}

async function started({ slug, machineCode, archives }, tell) {
  try {
    const [module, files] = await Promise.all([machineCode, archives()]);
    tell({ starting: true });
    return await startPython(slug, module, files);
  } catch (error) {
    tell({ failed: String(error) });
    return null;
  }
}

async function restored(contents, { slug, machineCode, archives }, tell) {
  try {
    const [module, kept] = await Promise.all([machineCode, contents()]);
    return await restorePython(slug, module, kept, archives);
  } catch (error) {
    await forgetImage(error);
    tell({ refused: true });
    return null;
  }
}

function counter(tell) {
  const files = [RUNTIME.machine_code, ...RUNTIME.archives];
  const total = files.reduce((sum, file) => sum + file.bytes, 0);
  let done = 0;
  return (bytes) => {
    done += bytes;
    tell({ fetching: { done: Math.min(done, total), total } });
  };
}
