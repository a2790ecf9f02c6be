import { startPython } from "./python.js";

// Messages in: {start} once, then {number, slug, request}. Out: {ready} or {failed}, then
// {number, reply}. Requests and replies are JSON text, as the bridge takes and gives them.
let answer = null;

addEventListener("message", ({ data }) => {
  if (data.start) {
    start(data.start);
  } else {
    postMessage({ number: data.number, reply: answer(data.slug, data.request) });
  }
});

async function start(parts) {
  try {
    answer = await startPython(parts);
    postMessage({ ready: true });
  } catch (error) {
    postMessage({ failed: String(error) });
  }
}
