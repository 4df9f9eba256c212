import { address, get } from '../api.js';
import { byId, el, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { collectPapers } from '../lesson/papers.js';
import { DEFAULTS, loadSettings } from '../settings.js';
import { length } from '../units.js';
import { layOut } from './lay-out.js';
import { templateSheets } from './sheet.js';
import { PAPERS } from './tiles.js';

/** The size of the first page; the others say theirs when they differ. */
function sizeWords(sheets, unit) {
  const words = (sheet) => `${length(sheet.widthMm, unit)} wide, ${length(sheet.heightMm, unit)} high${sheet.stated ? '' : ' (the file states no size)'}`;
  return `${Array.from(new Set(sheets.map(words))).join('; ')}.`;
}

async function show() {
  const place = new URLSearchParams(window.location.search);
  const query = { e: place.get('e') || '', l: place.get('l') || '' };
  const [lesson, settings] = await Promise.all([get('api/lesson', query), loadSettings().catch(() => DEFAULTS)]);
  const paper = collectPapers(lesson).find((candidate) => candidate.id === place.get('a'));
  const sheets = await templateSheets(address(paper.url), paper.mediaType, paper.title);
  byId('title').textContent = paper.title;
  document.title = `${paper.title} · Lehrcase`;
  byId('size').textContent = sizeWords(sheets, settings.lengthUnit);
  const choose = byId('paper-size');
  choose.append(...Object.entries(PAPERS).map(([id, one]) => el('option', { value: id }, one.title)));
  choose.value = settings.lengthUnit === 'in' ? 'letter' : 'a4';
  choose.addEventListener('change', () => layOut(sheets, choose.value));
  layOut(sheets, choose.value);
  document.documentElement.dataset.shown = '';
}

wakeIcons();
document.documentElement.dataset.ready = '';
byId('print-button').addEventListener('click', () => window.print());
show().catch((error) => byId('sheets').replaceChildren(errorNotice(error)));
