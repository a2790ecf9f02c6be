import { mount } from "./checker.js";
import { start } from "./client.js";
import { nameOpeners, openByKeyboard } from "./drawer.js";
import { judgeKeptOnce } from "./kept-verdicts.js";
import { followLinksInside, tellOfPage } from "./navigation.js";
import { keepOfflineCopy, showOfflineState } from "./offline.js";
import { startThemeInTime } from "./theme.js";

/** What is alive on the page in view; a page that goes takes its own along. */
let mounted = [];

function pageChanged() {
  nameOpeners();
  tellOfPage();
  mounted.forEach((unmount) => unmount());
  const checkers = [...document.querySelectorAll("[data-checker]")];
  if (checkers.length > 0) {
    start();
  }
  mounted = [
    ...checkers.map(mount),
    ...[...document.querySelectorAll("[data-log]")].map(mountLog),
    ...[...document.querySelectorAll("[data-schedule]")].map(mountSchedule),
    ...[...document.querySelectorAll("[data-practice]")].map(mountPractice),
  ];
  showOfflineState();
}

// Few pages need the log, judge a schedule or let practise: their scripts are fetched there.
function mountLog(root) {
  return mountedLater(import("./log-page.js"), root);
}

function mountSchedule(root) {
  return mountedLater(import("./schedule-page.js"), root);
}

function mountPractice(root) {
  return mountedLater(import("./practice-page.js"), root);
}

function mountedLater(script, root) {
  const coming = script.then((part) => part.mount(root));
  return () => coming.then((unmount) => unmount());
}

document.addEventListener("click", (event) => {
  if (event.target.closest?.("[data-retry]")) {
    start({ fresh: true });
  }
});

function textIsThere() {
  openByKeyboard();
  followLinksInside();
  pageChanged();
  startThemeInTime(followPages);
  keepOfflineCopy();
  judgeKeptOnce();
}

// The theme tells of the page that stands there too.
function followPages() {
  let isFirst = true;
  globalThis.document$?.subscribe(() => {
    isFirst || pageChanged();
    isFirst = false;
  });
}

if (document.readyState === "loading") {
  document.addEventListener("DOMContentLoaded", textIsThere);
} else {
  textIsThere();
}
