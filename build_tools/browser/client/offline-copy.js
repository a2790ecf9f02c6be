import { ROOT } from "../shared/site-urls.js";
import { reached } from "../shared/refusable.js";

/**
 * Have the copy on this device compared with its hashes, and what is wrong in it fetched anew.
 *
 * Result: how many files were `mended`; and `why` one could not be, as facts, or null. Where there is
 * no copy there is nothing to mend.
 */
export async function mendCopy() {
  const worker = await keeper();
  if (!worker) {
    return { mended: 0, why: null };
  }
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = ({ data }) => {
      port1.close();
      resolve(data);
    };
    worker.postMessage({ ask: "mend" }, [port2]);
  });
}

// Not the one that serves this page: in Firefox a page that was loaded past the copy may have a worker
// whose files come from it.
async function keeper() {
  const registrations = reached(() => navigator.serviceWorker);
  const registration = await registrations?.getRegistration(ROOT).catch(() => null);
  return registration?.active ?? null;
}

/** Tell whether the copy serves this page. */
export function isServed() {
  return Boolean(reached(() => navigator.serviceWorker.controller));
}
