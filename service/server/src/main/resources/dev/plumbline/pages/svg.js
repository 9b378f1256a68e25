// SPDX-License-Identifier: Apache-2.0
// Elements of drawings. Text goes in as text.

/** @param {string} name @param {object} attributes @param {(Node|string)[]} children */
export function svg(name, attributes = {}, ...children) {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

/** The same for HTML. */
export function html(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== null) element.setAttribute(key, value);
  }
  element.append(...children);
  return element;
}
