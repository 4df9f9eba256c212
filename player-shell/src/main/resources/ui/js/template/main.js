import { address, get } from '../api.js';
import { byId, el, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { collectPapers } from '../lesson/papers.js';
import { DEFAULTS, loadSettings } from '../settings.js';
import { length } from '../units.js';
import { ruler } from './ruler.js';
import { templateSheet } from './sheet.js';
import { PAPERS, spread } from './tiles.js';

/** A copy of the sheet's picture; a drawn page is copied dot by dot. */
function copyOf(node) {
  const copy = node.cloneNode(true);
  if (node.tagName === 'CANVAS') {
    copy.getContext('2d').drawImage(node, 0, 0);
  }
  return copy;
}

function tileNode(sheet, tile) {
  const picture = copyOf(sheet.node);
  picture.style.width = `${sheet.widthMm}mm`;
  picture.style.height = `${sheet.heightMm}mm`;
  picture.style.left = `${-tile.x}mm`;
  picture.style.top = `${-tile.y}mm`;
  const window = el('div', { class: 'tile-window' }, picture);
  window.style.width = `${tile.wide}mm`;
  window.style.height = `${tile.high}mm`;
  return window;
}

const foot = (title, tile) => el('div', { class: 'tile-foot' }, ruler(),
  el('p', {}, `${title}, ${tile.name}. The ruler must measure 100 mm; if not, print again at 100 %, “actual size”.`));

/** The sheets of a plan: each with its ruler, or, where the template fills the paper, the ruler on a sheet after it. */
function sheetNodes(sheet, plan, title) {
  if (plan.margin === 0) {
    const tile = plan.tiles[0];
    return [
      el('section', { class: 'tile bare' }, tileNode(sheet, tile)),
      el('section', { class: 'tile' }, el('div', { class: 'alone' }, foot(title, tile))),
    ];
  }
  return plan.tiles.map((tile) => el('section', { class: 'tile' }, tileNode(sheet, tile), foot(title, tile)));
}

function countWords(plan) {
  if (plan.margin === 0) {
    return 'It fills the whole paper; the ruler is printed on a second sheet.';
  }
  return plan.tiles.length === 1
    ? 'It fits on one sheet.'
    : `It needs ${plan.tiles.length} sheets; each repeats 10 mm of the one before. Lay them over each other and tape them.`;
}

/** Sets the sheet of paper; constructed style sheets are younger than our oldest browser, so a rule is changed in place. */
function setPage(plan) {
  const sheet = Array.from(document.styleSheets).find((one) => (one.href || '').endsWith('template.css'));
  const { wide, high } = plan.paper;
  const size = plan.lying ? `${high}mm ${wide}mm` : `${wide}mm ${high}mm`;
  sheet.insertRule(`@page { size: ${size}; margin: ${plan.margin}mm; }`, sheet.cssRules.length);
}

function layOut(sheet, title, paper) {
  const plan = spread(sheet.widthMm, sheet.heightMm, PAPERS[paper]);
  setPage(plan);
  byId('sheets').replaceChildren(...sheetNodes(sheet, plan, title));
  byId('sheet-count').textContent = countWords(plan);
}

async function show() {
  const place = new URLSearchParams(window.location.search);
  const query = { e: place.get('e') || '', l: place.get('l') || '' };
  const [lesson, settings] = await Promise.all([get('api/lesson', query), loadSettings().catch(() => DEFAULTS)]);
  const paper = collectPapers(lesson).find((candidate) => candidate.id === place.get('a'));
  const sheet = await templateSheet(address(paper.url), paper.mediaType, paper.title);
  byId('title').textContent = paper.title;
  document.title = `${paper.title} · Lehrcase`;
  byId('size').textContent = `${length(sheet.widthMm, settings.lengthUnit)} wide, ${length(sheet.heightMm, settings.lengthUnit)} high${sheet.stated ? '' : ' (the file states no size)'}.`;
  const choose = byId('paper-size');
  choose.append(...Object.entries(PAPERS).map(([id, one]) => el('option', { value: id }, one.title)));
  choose.value = settings.lengthUnit === 'in' ? 'letter' : 'a4';
  choose.addEventListener('change', () => layOut(sheet, paper.title, choose.value));
  layOut(sheet, paper.title, choose.value);
  document.documentElement.dataset.shown = '';
}

wakeIcons();
document.documentElement.dataset.ready = '';
byId('print-button').addEventListener('click', () => window.print());
show().catch((error) => byId('sheets').replaceChildren(errorNotice(error)));
