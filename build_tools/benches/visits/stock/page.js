import { QUESTION } from "./question.js";

// The page with `?keep` also keeps its files for use without a network, once it has answered.
const worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
worker.addEventListener("message", async ({ data }) => {
  document.querySelector("[data-verdict]").dataset.outcome = JSON.parse(data).outcome;
  if (new URL(location).searchParams.has("keep")) {
    await navigator.serviceWorker.register("./service-worker.js");
    await navigator.serviceWorker.ready;
    document.body.dataset.kept = "yes";
  }
});
worker.postMessage(QUESTION);
