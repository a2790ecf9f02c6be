import { reached } from "./reached.js";

/**
 * Have the copy on this device compared with its hashes, and what is wrong in it fetched anew.
 *
 * Result: how many files were `mended`; and `why` one could not be, as facts, or null. Where no copy
 * serves this page there is nothing to mend.
 */
export function mendCopy() {
  const worker = serving();
  if (!worker) {
    return Promise.resolve({ mended: 0, why: null });
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

/** The worker whose copy serves this page, or null. */
export function serving() {
  return reached(() => navigator.serviceWorker.controller);
}
