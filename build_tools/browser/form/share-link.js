import { toFragment } from "../basics/address.js";
import { say } from "../basics/element.js";

/** Let the reader take the address of the case along, with the day it was judged for. */
export function offerSharing(checker, options) {
  const button = checker.root.querySelector("[data-copy]");
  button?.addEventListener("click", () => copy(checker), options);
}

async function copy(checker) {
  if (checker.tooLong) {
    say(checker.root.querySelector("[data-said]"), "This case is too long for an address.");
    return;
  }
  const address = new URL(location.href);
  // An address without a day means today: a shared verdict has to stay what it was.
  const day = checker.reply?.on ? { on: checker.reply.on } : {};
  address.hash = toFragment({ ...day, ...checker.request });
  const said = checker.root.querySelector("[data-said]");
  try {
    await navigator.clipboard.writeText(address.href);
    say(said, "Address copied. Whoever opens it sees this case.");
  } catch {
    say(said, `Copy it from here: ${address.href}`);
  }
}
