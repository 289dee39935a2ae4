// Elements made without markup, so that no name of a trip is ever read as one.

/**
 * @param {string} tag
 * @param {Record<string, string | boolean>} [attributes] true: set without a value; false: not set
 * @param {...(Node | string)} children
 * @returns {HTMLElement}
 */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== false) element.setAttribute(name, value === true ? '' : value);
  element.append(...children);
  return element;
}

/** @param {string} id @returns {HTMLElement} */
export function at(id) {
  const element = document.getElementById(id);
  if (!element) throw new Error('the page has no ' + id);
  return element;
}

/**
 * Says something to everybody, also to those who do not see the page.
 * @param {string} text
 */
export function tell(text) {
  at('told').textContent = text;
}

/** @type {Map<string, string>} */
const kept = new Map();

/**
 * Whether something is another than when this was asked last: what is the same is not made again.
 * @param {string} name @param {unknown} value
 */
export function changed(name, value) {
  const text = JSON.stringify(value);
  if (kept.get(name) === text) return false;
  kept.set(name, text);
  return true;
}
