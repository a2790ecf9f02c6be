import { begin } from "./start.js";
import { failureOf } from "../shared/failure.js";
import { keepMachineCode } from "./machine-code.js";
import { openReplies } from "../shared/reply-channel.js";
import { keepImage } from "./start-image.js";

// How to begin is the worker's name, as JSON, since a message would wait behind the scripts it loads.
// Messages in: {keep} once it is quiet, {ping}, answered by {alive}, and {number, slug, request}, or {number, call, value} for
// a schedule.
// Out: {fetching} while files come, {starting}, then {ready} with the channel for replies, {failed}
// with why (failure.js) or {refused}; then {number, reply}; {kept} with the length of an image once it is kept.
// Requests and replies are JSON text, as the bridge takes and gives them.
let python = null;
const replies = openReplies();

addEventListener("message", ({ data }) => {
  if (data.ping) {
    postMessage({ alive: true });
  } else if (data.keep) {
    keep();
  } else {
    answered(data);
  }
});

start();

async function start() {
  python = await begin(JSON.parse(globalThis.name || "{}"), (told) => postMessage(told));
  if (python) {
    postMessage({ ready: true, taken: Boolean(python.image), channel: replies.name });
  }
}

async function answered({ number, slug, request, call, value }) {
  try {
    if (call) {
      postMessage({ number, reply: await python.schedule(call, value) });
    } else {
      replies.send({ number, reply: await python.answer(slug, request) });
    }
  } catch (error) {
    postMessage({ failed: failureOf(error) });
  }
}

async function keep() {
  const { image, note } = python;
  python.image = null; // as large as the memory itself
  if (image && await keepImage(image, note())) {
    await keepMachineCode(); // of use beside an image only
    postMessage({ kept: image.length });
  }
}
