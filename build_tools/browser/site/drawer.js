import { element } from "../basics/element.js";

/**
 * The list of pages, which a narrow screen keeps in a drawer, by keyboard and by ear.
 *
 * The theme opens the drawer, and the lists within it, by labels of hidden boxes. No key reaches
 * most of them, and none tells what it is: here each becomes a button. The boxes stay.
 */

const DRAWER = "__drawer";
const OPENERS = `label.md-header__button[for="${DRAWER}"], label.md-nav__link[for]`;
const WAYS_BACK = ".md-nav--primary .md-nav label.md-nav__title[for]";
const LIST = ".md-sidebar--primary";

/** Listen for what opens and closes; once for all pages. */
export function openByKeyboard() {
  document.addEventListener("change", ({ target }) => opened(target));
  document.addEventListener("keydown", ({ key }) => key === "Escape" && leave());
  document.addEventListener("focusin", ({ target }) => {
    if (isOpen() && !target.closest(`${LIST}, [for="${DRAWER}"]`)) {
      box().click();
    }
  });
}

/** Make buttons of the labels of a page that has come. */
export function nameOpeners() {
  for (const label of document.querySelectorAll(OPENERS)) {
    const name = label.textContent.trim() ? {} : { "aria-label": "Navigation" };
    const { checked } = document.getElementById(label.htmlFor);
    replace(label, { ...name, "aria-expanded": String(checked) });
  }
  for (const label of document.querySelectorAll(WAYS_BACK)) {
    replace(label, { "aria-label": `${label.textContent.trim()}, back` });
  }
}

function replace(label, attributes) {
  const { className, htmlFor, id } = label;
  const common = { type: "button", class: className, for: htmlFor, id: id || null };
  const button = element("button", { ...common, ...attributes }, ...label.childNodes);
  button.addEventListener("click", () => document.getElementById(htmlFor).click());
  label.replaceWith(button);
}

function opened({ id, checked }) {
  const opener = document.querySelector(`button[for="${id}"][aria-expanded]`);
  opener?.setAttribute("aria-expanded", String(checked));
  if (!opener || document.activeElement.getAttribute("for") !== id) {
    return;
  }
  if (id === DRAWER && checked) {
    goTo(document.querySelector(LIST));
  } else if (!isShown(document.activeElement)) {
    goTo(opener.parentElement); // one list covers the other: on with the first that is seen there
  }
}

function goTo(list) {
  [...list.querySelectorAll("a[href], button")].find(isShown)?.focus();
}

function leave() {
  if (isOpen()) {
    box().click();
    document.querySelector(`button[for="${DRAWER}"]`).focus();
  }
}

function isOpen() {
  return box()?.checked;
}

function box() {
  return document.getElementById(DRAWER);
}

function isShown(one) {
  return one.checkVisibility({ visibilityProperty: true });
}
