import { get, post } from '../js/api.js';
import { button, el } from '../js/dom.js';
import { several } from '../js/units.js';
import { field, form } from './forms.js';
import { goodNotice, guarded } from './notice.js';
import { sendBytes } from './send.js';
import { resultItem } from './result.js';

const MOST_AT_ONCE = 4;

/** Drops come as files, or as text from a mail program. */
function dropZone(take) {
  const input = el('input', { type: 'file', multiple: true, id: 'laptop-files', class: 'heard', on: { change: () => { take([...input.files]); input.value = ''; } } });
  const zone = el('div', { class: 'drop', id: 'laptop-drop' },
    el('p', {}, el('strong', {}, 'Drop laptop cards, mails, help slips or photos of codes here')),
    el('p', { class: 'quiet' }, 'As many at once as you like: files, saved mails, marked text, or photos (JPEG, PNG) of the code on a buyer’s screen.'),
    button({ text: 'Choose files', sign: 'card', onClick: () => input.click() }), input);
  const over = (on) => (event) => {
    event.preventDefault();
    zone.toggleAttribute('data-over', on);
  };
  zone.addEventListener('dragover', over(true));
  zone.addEventListener('dragleave', over(false));
  zone.addEventListener('drop', (event) => {
    over(false)(event);
    const files = [...event.dataTransfer.files];
    const text = event.dataTransfer.getData('text/plain');
    take(files.length ? files : [new File([text], 'marked text')]);
  });
  return zone;
}

/** Many files: a few are asked about at a time, answers keep their order. */
async function takeAll(files, list, summary, context) {
  const counts = { letter: 0, waits: 0, slip: 0, returned: 0, nothing: 0 };
  const queue = files.map((file) => ({ file, place: el('li', {}, `${file.name} …`) }));
  list.prepend(...queue.map((one) => one.place));
  const work = async () => {
    for (let next = queue.shift(); next; next = queue.shift()) {
      const { file, place } = next;
      const answer = await guarded(place, () => sendBytes('api/laptops', file, file.name));
      if (answer) {
        const items = answer.results.map((result) => {
          counts[result.kind] += 1;
          return resultItem(result, file.name, context);
        });
        place.replaceWith(...items);
      }
    }
  };
  await Promise.all(Array.from({ length: MOST_AT_ONCE }, work));
  const said = [
    counts.letter ? several(counts.letter, 'letter') + ' to send' : null,
    counts.waits ? several(counts.waits, 'card') + (counts.waits > 1 ? ' wait' : ' waits') : null,
    counts.slip ? several(counts.slip, 'help slip') : null,
    counts.returned ? `${several(counts.returned, 'place')} given back` : null,
    counts.nothing ? `${counts.nothing} with nothing for the desk` : null].filter(Boolean);
  summary.replaceChildren(goodNotice(`${said.join(', ')}.`));
}

/** How many replacements a year need no question. */
function policyForm() {
  const out = el('div', { 'aria-live': 'polite' });
  const number = field('Replaced laptops a year and license that get their letter without asking you',
    { name: 'perYear', type: 'number', min: 0, max: 99, required: true }, 'More wait for you under Waiting. 0 asks every time.');
  get('api/policy').then((policy) => { number.querySelector('input').value = policy.perYear; }).catch(() => undefined);
  return el('details', { class: 'sheet', id: 'policy' }, el('summary', {}, 'When a card names the laptop that it replaces'),
    form({}, async (typed) => {
      const kept = await guarded(out, () => post('api/policy', typed));
      if (kept) {
        out.replaceChildren(goodNotice(`Granted without asking: ${kept.perYear} a year. It stands in the book.`));
      }
    }, number, el('p', {}, el('button', { type: 'submit' }, 'Keep')), out));
}

/** Laptops: whatever buyers send becomes letters. */
export function laptopRoom(place, context) {
  const list = el('ol', { class: 'letters', id: 'letters', reversed: true });
  const summary = el('div', { id: 'laptop-summary' });
  const take = (files) => takeAll(files, list, summary, context);
  const pasted = el('textarea', { id: 'pasted', 'aria-label': 'Text of mails', placeholder: 'or paste the text of one or more mails' });
  place.append(
    el('p', { class: 'quiet' }, 'The same card always gets the same letter. Letters go to the address in the sales book only.'),
    el('div', { class: 'ways-in' }, dropZone(take), el('div', { class: 'pasting' }, pasted, button({
      text: 'Answer the pasted text',
      onClick: () => {
        if (pasted.value.trim()) {
          take([new File([pasted.value], 'pasted text')]);
          pasted.value = '';
        }
      },
    }))),
    summary, list, policyForm());
}
