const AGAIN = "It is tried again whenever this site is opened.";
const HOST = "Whoever runs this site: see its page Hosting.";

// Each by what went wrong with a file, as the service worker tells it.
const WORDS = {
  "refused": ({ path, status }) => `${path} was refused (${status}). ${AGAIN} ${HOST}`,
  "other-type": ({ path, came }) =>
    `${path} came as ${came || "a file without a type"}: a sign-in page or a filter of this network may stand in the way. Sign in or use another network, then open this site again.`,
  "changed": ({ path }) =>
    `${path} does not match its hash: something between the host and this device changes files. Use another network, then open this site again. ${HOST}`,
  "did-not-arrive": ({ path }) =>
    `${path} did not arrive: the network is gone, or blocks it. ${AGAIN}`,
  "no-room": () =>
    "there is no room for it on this device. Free about 40 MB, then open this site again.",
  "other": ({ path, text }) => `${path} could not be kept (${text}). ${AGAIN}`,
};

/** Say why a file is not in the copy, and what to do, to stand behind a colon. */
export function whyLacking(facts) {
  return (WORDS[facts.fault] ?? WORDS.other)(facts);
}

/** Look why the script that keeps the copy does not run, in the same words. */
export async function whyNotKept(script) {
  const path = script.pathname.split("/").pop();
  try {
    const { ok, status, headers } = await fetch(script, { cache: "no-store" });
    const came = (headers.get("Content-Type") ?? "").split(";")[0];
    if (!ok) {
      return whyLacking({ path, fault: "refused", status });
    }
    return /script$/.test(came)
      ? "the browser refuses it, as in some private windows, or where cookies are blocked."
      : `${path} came as ${came || "a file without a type"}, and no browser runs it as that. ${HOST}`;
  } catch {
    return whyLacking({ path, fault: "did-not-arrive" });
  }
}
