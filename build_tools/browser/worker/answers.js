// What a checker says that lacks a file: it crashed, or its data is damaged.
const LACKING = ['{"kind": "crash"', '{"kind": "damaged"'];

/**
 * Give the two ways to ask a started Python, each with a promise of the reply as JSON text.
 *
 * Inputs: Python; the slugs of the checkers it has imported; its files where they come later,
 * else null. A checker that is imported answers without them. Should it need one it gives no
 * answer: then they are waited for, and it is asked again.
 */
export function asking(python, ready, files) {
  const { answer } = python.pyimport("checkers");
  let late = files;
  let stream = null; // few pages judge a schedule, so its module waits for the first call
  const come = async () => {
    await late?.come();
    late = null;
  };
  return {
    async answer(slug, request) {
      if (late && !answersEarly(slug, ready)) {
        await come();
      }
      const reply = answer(slug, request);
      if (late && LACKING.some((start) => reply.startsWith(start))) {
        await come();
        return answer(slug, request);
      }
      if (late) {
        setTimeout(() => come().catch(() => {}), 0); // behind the answer; tried again when needed
      }
      return reply;
    },
    async schedule(call, value) {
      await come();
      stream ??= python.pyimport("checkers.contract.schedule_stream");
      return schedulePart(python, stream, call, value);
    },
  };
}

// A schedule tells of a row that crashed inside its reply.
function answersEarly(slug, ready) {
  return slug !== "schedule" && ready.includes(slug);
}

function schedulePart(python, stream, call, value) {
  if (!(value instanceof Uint8Array)) {
    return value === undefined ? stream[call]() : stream[call](value);
  }
  const bytes = python.toPy(value);
  try {
    return stream[call](bytes);
  } finally {
    bytes.destroy();
  }
}
