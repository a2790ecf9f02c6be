import { recall, remember } from "../basics/memory.js";
import { reached } from "../shared/refusable.js";
import { WORKER } from "./worker-url.js";

const SCARCE = 2; // gigabytes of memory: with less, two Pythons at a time could cost the page
const REHEARSED = "start rehearsed"; // by the worker of which build

/**
 * Start once from an image just kept, of this length [bytes], in a worker that is ended again.
 *
 * So the next start finds what this browser has compiled of the scripts. It keeps that with those
 * of the offline copy alone, so this waits until the copy serves the page. And the image is tried:
 * `refused` is called where it cannot be used.
 */
export async function rehearse(length, refused) {
  const scarce = (navigator.deviceMemory ?? SCARCE) < SCARCE;
  if (scarce || recall(REHEARSED) === WORKER.pathname || !reached(() => navigator.serviceWorker)) {
    return;
  }
  await copyServes();
  const worker = new Worker(WORKER, { type: "module", name: JSON.stringify({ image: length }) });
  worker.addEventListener("message", ({ data }) => {
    if (data.ready) {
      remember(REHEARSED, WORKER.pathname);
      worker.terminate();
    } else if (data.refused) {
      refused();
      worker.terminate();
    }
  });
}

function copyServes() {
  const { serviceWorker } = navigator;
  return new Promise((resolve) => {
    serviceWorker.addEventListener("controllerchange", resolve, { once: true });
    if (serviceWorker.controller) {
      resolve();
    }
  });
}
