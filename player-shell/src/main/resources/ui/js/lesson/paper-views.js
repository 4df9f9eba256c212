import { address, get } from '../api.js';
import { el } from '../dom.js';
import { proseFrom } from '../prose.js';
import { showPdf } from './paper-pdf.js';
import { showFiring } from './firing.js';
import { showLayers } from './layers-view.js';
import { showMaterials } from './materials.js';
import { showNotes } from './notes-view.js';
import { photoAddress } from '../notebook/photo.js';
import { showTemplate } from './template-view.js';

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

async function showOwn(body, paper) {
  body.replaceChildren(el('img', { class: 'paper-image', src: photoAddress(paper.picture), alt: paper.title }));
  return { pages: 0 };
}

const VIEWS = {
  pdf: showPdf, markdown: showMarkdown, text: showText, image: showImage, template: showTemplate, firing: showFiring, materials: showMaterials, layers: showLayers, notes: showNotes, own: showOwn,
};

/**
 * Shows a paper in `body`.
 * @returns {Promise<{pages: number, goTo?: function, tools?: Node[], dispose?: function}>} how to turn it and let it go
 */
export const showPaper = (body, paper, store) => VIEWS[paper.kind](body, paper, store);
