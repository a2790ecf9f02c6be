import { callSchedule } from "../client/client.js";
import { isNoAnswer } from "../basics/outcomes.js";

/** Thrown where the request, or the mapping, cannot be used; holds the reply that says why. */
export class Refused extends Error {
  constructor(reply) {
    super(reply.kind);
    this.reply = reply;
  }
}

/**
 * Judge a schedule, a few rows at a time.
 *
 * Inputs: the schedule; the request without its text; the outputs to write; what to call with
 * each reply; a signal that stops it. Result: the last reply, or null where it was stopped.
 */
export async function run(schedule, request, forms, heard, signal) {
  granted(await callSchedule("begin", JSON.stringify({ request, forms })));
  for await (const piece of schedule.pieces()) {
    if (await stopped("feed", piece, heard, signal)) {
      return null;
    }
  }
  let reply = granted(await callSchedule("finish"));
  heard(reply);
  while (reply.more && !signal.aborted) {
    reply = granted(await callSchedule("go_on"));
    heard(reply);
  }
  return reply.kind === "end" ? reply : null;
}

async function stopped(call, piece, heard, signal) {
  let reply = signal.aborted ? { more: false } : granted(await callSchedule(call, piece));
  while (!signal.aborted) {
    heard(reply);
    if (!reply.more) {
      return false;
    }
    reply = granted(await callSchedule("go_on"));
  }
  return true;
}

function granted(reply) {
  if (reply.kind === "invalid" || isNoAnswer(reply)) {
    throw new Refused(reply);
  }
  return reply;
}
