const FILES = ["./", "./page.js", "./worker.js", "./question.js", "./wheel.txt"];
const RUNTIME = ["pyodide.js", "pyodide.asm.js", "pyodide.asm.wasm", "pyodide-lock.json", "python_stdlib.zip"];

addEventListener("install", (event) => event.waitUntil(fill()));
addEventListener("activate", (event) => event.waitUntil(clients.claim()));
addEventListener("fetch", (event) => event.respondWith(
  caches.match(event.request, { ignoreSearch: true }).then((kept) => kept ?? fetch(event.request)),
));

async function fill() {
  const cache = await caches.open("stock");
  const wheel = await (await fetch("./wheel.txt")).text();
  await cache.addAll([...FILES, `./${wheel}`, ...RUNTIME.map((name) => `./runtime/${name}`)]);
}
