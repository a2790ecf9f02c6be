import { packed, restorePython, startPython } from "./python.js";

// Messages in: {start} or {restore} once, {keep} once it is quiet, and {number, slug, request},
// or {number, call, value} for a schedule.
// Out: {ready}, {failed} or {refused}, then {image} and {number, reply}. Requests and replies
// are JSON text, as the bridge takes and gives them.
let python = null;

addEventListener("message", ({ data }) => {
  if (data.start) {
    startPython(data.start).then(ready, (error) => postMessage({ failed: String(error) }));
  } else if (data.restore) {
    restorePython(data.restore).then(ready, (error) => postMessage({ refused: String(error) }));
  } else if (data.keep) {
    keep(data.keep);
  } else if (data.call) {
    postMessage({ number: data.number, reply: python.schedule(data.call, data.value) });
  } else {
    postMessage({ number: data.number, reply: python.answer(data.slug, data.request) });
  }
});

function ready(started) {
  python = started;
  postMessage({ ready: true, taken: Boolean(started.image) });
}

function keep(binding) {
  try {
    const image = packed(python, binding);
    postMessage({ image }, [image]);
  } catch (error) {
    console.info(`The image of the started checkers cannot be kept: ${error}`);
  }
  python.image = null; // as large as the memory itself
}
