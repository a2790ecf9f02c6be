import { bringToLife } from "./mount.js";
import { mount } from "../checker/checker.js";
import { start, tryAgain } from "../client/client.js";
import { nameOpeners, openByKeyboard } from "./drawer.js";
import { fetchedLater, tellNotFetched } from "../client/lazy-import.js";
import { judgeKeptOnce } from "../log/standing/after-update.js";
import { followLinksInside, tellOfPage } from "./navigation.js";
import { keepOfflineCopy, showOfflineState } from "./offline.js";
import { startThemeInTime } from "./theme.js";

// Few pages need the log, judge a schedule or let practise: their scripts are fetched there.
const LATER = {
  log: fetchedLater(() => import("../log/page/page.js")),
  schedule: fetchedLater(() => import("../schedule/page.js")),
  practice: fetchedLater(() => import("../practice/page.js")),
};

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
    ...checkers.map((root) => bringToLife(mount, root)),
    ...Object.entries(LATER).flatMap(([name, fetchIt]) =>
      [...document.querySelectorAll(`[data-${name}]`)].map((root) => bringToLife(() => mountLater(fetchIt, root), root))),
  ];
  showOfflineState();
}

async function mountLater(fetchIt, root) {
  const part = await fetchIt().catch(() => tellNotFetched(root));
  return (await part?.mount(root)) ?? (() => {});
}

document.addEventListener("click", (event) => {
  if (event.target.closest?.("[data-retry]")) {
    tryAgain();
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
