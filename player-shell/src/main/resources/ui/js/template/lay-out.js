import { byId, el } from '../dom.js';
import { ruler } from './ruler.js';
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

/**
 * Sets the sheet of paper; constructed style sheets are younger than our oldest browser, so rules are added in place.
 * Pages that lie or have another margin get a page of their own name where the browser knows such; the first
 * page's paper holds for all elsewhere.
 */
function setPage(plan, name) {
  const sheet = Array.from(document.styleSheets).find((one) => (one.href || '').endsWith('template.css'));
  const { wide, high } = plan.paper;
  const size = plan.lying ? `${high}mm ${wide}mm` : `${wide}mm ${high}mm`;
  sheet.insertRule(`@page ${name} { size: ${size}; margin: ${plan.margin}mm; }`, sheet.cssRules.length);
}

function allCountWords(plans) {
  const tiles = plans.reduce((sum, plan) => sum + plan.tiles.length, 0);
  return plans.length === 1 ? countWords(plans[0])
    : `It has ${plans.length} pages, each at its true size; they need ${tiles} sheets and their rulers.`;
}

const pageName = (plan) => `${plan.lying ? 'lying' : 'upright'}-${plan.margin}`;

/** Puts sheets on paper at their true size, each with a ruler; says how many pages that takes. */
export function layOut(sheets, paper) {
  const plans = sheets.map((sheet) => spread(sheet.widthMm, sheet.heightMm, PAPERS[paper]));
  setPage(plans[0], '');
  new Map(plans.map((plan) => [pageName(plan), plan])).forEach((plan, name) => {
    try {
      setPage(plan, name);
    } catch (unknownRule) {
      // An older browser has one paper for all pages; each template still has its true size.
    }
  });
  byId('sheets').replaceChildren(...plans.flatMap((plan, at) => sheetNodes(sheets[at], plan, sheets[at].title).map((node) => {
    node.style.page = pageName(plan);
    return node;
  })));
  byId('sheet-count').textContent = allCountWords(plans);
}
