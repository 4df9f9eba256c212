/** Small builders for the document. Text enters as text only; nothing here parses markup. */

const SVG = 'http://www.w3.org/2000/svg';

function fill(node, attributes, children) {
  Object.entries(attributes || {}).forEach(([name, value]) => {
    if (value === null || value === undefined || value === false) {
      return;
    }
    if (name === 'on') {
      Object.entries(value).forEach(([event, listener]) => node.addEventListener(event, listener));
    } else {
      node.setAttribute(name, value === true ? '' : String(value));
    }
  });
  children.flat().forEach((child) => {
    if (child !== null && child !== undefined && child !== false) {
      node.append(child);
    }
  });
  return node;
}

/** An HTML element: `el('p', {class: 'x', on: {click}}, 'text', child)`. */
export function el(tag, attributes, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

/** An SVG element, same manner. */
export function svg(tag, attributes, ...children) {
  return fill(document.createElementNS(SVG, tag), attributes, children);
}

/** A picture sign from `ui/icons`, hidden from screen readers: the control carries the words. */
export function icon(name) {
  const node = el('span', { class: 'icon', 'aria-hidden': 'true' });
  setIcon(node, name);
  return node;
}

/** Changes the sign of a node made by {@link icon} or written in the page with class "icon". */
export function setIcon(node, name) {
  const url = new URL(`../icons/${name}.svg`, import.meta.url);
  node.style.setProperty('--icon', `url("${url}")`);
}

/** Gives every `data-icon` element of the written page its sign. */
export function wakeIcons(root = document) {
  root.querySelectorAll('[data-icon]').forEach((node) => setIcon(node, node.dataset.icon));
}

/** A button with a sign and words; pass `label` for a sign alone. */
export function button({ text, label, sign, kind, onClick, ...rest }) {
  return el('button', {
    type: 'button',
    class: kind || null,
    'aria-label': label || null,
    title: label || null,
    on: { click: onClick },
    ...rest,
  }, sign ? icon(sign) : null, text ? el('span', {}, text) : null);
}

export const byId = (id) => document.getElementById(id);
