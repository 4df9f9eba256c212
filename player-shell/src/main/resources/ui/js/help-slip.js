import { post } from './api.js';
import { codeDrawing } from './code.js';
import { button, el } from './dom.js';
import { openPanel } from './panel.js';
import { saveText } from './save-text.js';

function select(text) {
  const range = document.createRange();
  range.selectNodeContents(text);
  getSelection().removeAllRanges();
  getSelection().addRange(range);
}

async function copy(text, said) {
  try {
    await navigator.clipboard.writeText(text.textContent);
    said.textContent = 'Copied. Paste it into a mail to your teacher.';
  } catch (refused) {
    select(text);
    said.textContent = 'The text is marked: copy it with Ctrl+C.';
  }
}

/** Prints what stands in the panel, and not the page below it. */
function printPanel() {
  const root = document.documentElement;
  root.dataset.print = 'panel';
  window.addEventListener('afterprint', () => delete root.dataset.print, { once: true });
  window.print();
}

/** Shows the slip: to read, to save on a stick, to copy, to print, or to photograph. */
export async function showHelpSlip(error) {
  const slip = await post('api/help-slip', error && error.code ? { code: error.code } : {});
  const text = el('pre', { class: 'slip', tabindex: '0', 'aria-label': 'Help slip' }, slip.text);
  const said = el('p', { role: 'status' });
  openPanel('Help slip',
    el('p', {}, 'Send this to the teacher from whom you bought the course, from any phone or computer. It holds no key, nothing of the course and no names of your files.'),
    el('div', { class: 'row' },
      button({ text: 'Save as a file', kind: 'main', sign: 'save', onClick: () => saveText(slip.text, slip.fileName) }),
      button({ text: 'Copy the text', onClick: () => copy(text, said) }),
      button({ text: 'Print', sign: 'print', onClick: printPanel })),
    said,
    el('div', { class: 'slip-sides' }, text,
      el('figure', {}, codeDrawing(slip.code, 'The help slip as a code for a phone'), el('figcaption', {}, 'The same as a code: photograph it and send the picture.'))));
}

/** The one button that stands on every error and in the menus. */
export function helpSlipButton(error) {
  const said = el('span', { role: 'status' });
  return el('p', { class: 'help-slip' }, button({
    text: 'Help slip',
    onClick: () => showHelpSlip(error).catch((failed) => {
      said.textContent = ` ${failed.happened || ''} ${failed.next || ''}`;
    }),
  }), said);
}
