import { fromFragment, toFragment } from "../basics/address.js";
import { holdTyped, place } from "./tab-case.js";

const SETTLED = 300; // milliseconds without a change, after which the address is surely written
const LONGEST = 30000; // characters of an address that programs still pass on whole
const MOST = 60; // changes at once in a while: browsers refuse addresses that change too often
const WHILE = 30_000; // milliseconds

let recent = [];

/** Write the case into the address once nothing changes any more, and hold it for a reload now. */
export function keepInAddress(checker) {
  clearTimeout(checker.addressTimer);
  checker.addressTimer = setTimeout(() => settle(checker), SETTLED);
  hold(checker, place());
}

/** Write what was just typed into the address, at once as long as the browser allows. */
export function writeAtOnce(checker) {
  const now = performance.now();
  recent = recent.filter((moment) => now - moment < WHILE);
  if (recent.length < MOST) {
    recent.push(now);
    const before = place();
    writeAddress(checker);
    hold(checker, before, place()); // a reload that has begun may still come back to the one before
  }
}

function settle(checker) {
  writeAddress(checker);
  hold(checker, place());
}

function hold(checker, ...places) {
  if (checker.own) {
    holdTyped(checker.device.whole(), places);
  }
}

/** Write the case into the address, and into the link of a case in a lesson. */
export function writeAddress(checker) {
  const fragment = toFragment(checker.request);
  const link = checker.root.querySelector("[data-open]");
  if (link) {
    link.hash = fragment;
  }
  checker.tooLong = fragment.length > LONGEST;
  const kept = checker.tooLong ? "" : fragment; // half a case would be another case
  const given = fromFragment(location.hash);
  if (given && location.hash !== checker.address) {
    return; // another case was opened this moment, and is not read yet
  }
  // A fragment that is an anchor stays until something is typed.
  if (checker.own && (kept || given) && checker.root.isConnected) {
    replaceAddress(kept ? `#${kept}` : location.pathname);
    addressRead(checker);
  }
}

/** Remember the address that the form has been filled from, or was written from it. */
export function addressRead(checker) {
  checker.address = location.hash;
}

function replaceAddress(address) {
  try {
    if (location.hash !== address) {
      history.replaceState(history.state, "", address);
    }
  } catch {
    // Too many in a while: what was typed is held beside it, and the next change tries again.
  }
}
