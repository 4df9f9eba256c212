import { address, get } from '../api.js';
import { el } from '../dom.js';
import { showPdf } from './paper-pdf.js';
import { showFiring } from './firing.js';
import { showMaterials } from './materials.js';
import { showTemplate } from './template-view.js';

/** The server's HTML is already cleaned; the named policy lets exactly this place insert it. */
const policy = window.trustedTypes
  ? window.trustedTypes.createPolicy('markdown', { createHTML: (html) => html })
  : { createHTML: (html) => html };

/** Parses outside the page first, so that nothing in it can load or run before it is looked at. */
function proseFrom(html) {
  const parsed = new DOMParser().parseFromString(policy.createHTML(html), 'text/html');
  parsed.querySelectorAll('script, style, iframe, object, embed, link, meta, form, base').forEach((node) => node.remove());
  parsed.querySelectorAll('*').forEach((node) => Array.from(node.attributes).forEach((attribute) => {
    if (attribute.name.startsWith('on') || attribute.name === 'style' || /^\s*javascript:/i.test(attribute.value)) {
      node.removeAttribute(attribute.name);
    }
  }));
  return Array.from(parsed.body.childNodes).map((node) => document.adoptNode(node));
}

async function showMarkdown(body, paper, store) {
  const { html } = await get('api/markdown', { e: store.getState().lesson.edition, a: paper.id });
  body.replaceChildren(el('div', { class: 'prose' }, proseFrom(html)));
  return { pages: 0 };
}

async function showText(body, paper) {
  const response = await fetch(address(paper.url));
  body.replaceChildren(el('pre', { class: 'prose' }, await response.text()));
  return { pages: 0 };
}

async function showImage(body, paper) {
  body.replaceChildren(el('img', { class: 'paper-image', src: address(paper.url), alt: paper.title }));
  return { pages: 0 };
}

const VIEWS = {
  pdf: showPdf, markdown: showMarkdown, text: showText, image: showImage, template: showTemplate, firing: showFiring, materials: showMaterials,
};

/**
 * Shows a paper in `body`.
 * @returns {Promise<{pages: number, goTo?: function, tools?: Node[], dispose?: function}>} how to turn it and let it go
 */
export const showPaper = (body, paper, store) => VIEWS[paper.kind](body, paper, store);
