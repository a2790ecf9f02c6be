/** Make an HTML element: a tag, its attributes, its children (elements or text). */
export function element(tag, attributes = {}, ...children) {
  return filled(document.createElement(tag), attributes, children);
}

/** Make an SVG element likewise. */
export function drawn(tag, attributes = {}, ...children) {
  return filled(document.createElementNS("http://www.w3.org/2000/svg", tag), attributes, children);
}

function filled(made, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== null && value !== undefined && value !== false) {
      made.setAttribute(name, value === true ? "" : value);
    }
  }
  made.append(...children.filter((child) => child !== null && child !== ""));
  return made;
}

/** Set an element's text only where it changes, so that nothing is announced twice. */
export function say(target, text) {
  if (target.textContent !== text) {
    target.textContent = text;
  }
}
