/** The worker is served beside the page's script. */
export const WORKER = new URL("./worker.js", import.meta.url);
