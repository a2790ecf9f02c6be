"""A worker that tries to tell another host something, and tells how far it came."""

from __future__ import annotations

# What a worker could tell another host by; each says whether it was let.
TELLS = """
const tried = (way) => way().then(() => "went", ({ name }) => name);
onmessage = async ({ data: url }) => postMessage({
  fetch: await tried(() => fetch(url, { mode: "no-cors" })),
  import: await tried(() => import(url)),
});
"""
ASK_WORKER = """
([script, url]) => new Promise((done) => {
  const worker = new Worker(script, { type: "module" });
  worker.onmessage = ({ data }) => done(data);
  worker.onerror = ({ message }) => done({ error: message });
  worker.postMessage(url);
})
"""
BLOCKED = {"fetch": "TypeError", "import": "TypeError"}  # what a network that fails gives as well
