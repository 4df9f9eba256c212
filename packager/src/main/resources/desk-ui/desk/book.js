import { get } from '../js/api.js';
import { button, el } from '../js/dom.js';
import { choice } from './forms.js';
import { goodNotice, guarded } from './notice.js';
import { saveText } from '../js/save-text.js';

const KINDS = ['licensed', 'gifted', 'reissued', 'sent', 'answered', 'retired', 'given back', 'granted', 'policy', 'packed', 'keys', 'stick', 'corrected', 'refunded', 'blocked',
  'unblocked', 'places', 'renamed', 'person', 'facts', 'erased', 'undone', 'backup', 'passphrase', 'opened', 'rebuilt', 'closed'];

function table(events) {
  return el('div', { class: 'wide' }, el('table', { id: 'events' },
    el('thead', {}, el('tr', {}, ['No.', 'When', 'What', 'Who', 'More'].map((head) => el('th', { scope: 'col' }, head)))),
    el('tbody', {}, events.map((event) => el('tr', {},
      el('td', { class: 'number' }, String(event.seq)),
      el('td', { class: 'mono' }, event.at.replace('T', ' ').replace('Z', '')),
      el('td', {}, event.kind), el('td', {}, event.who || `${event.subject.slice(0, 8)} …`),
      el('td', {}, ['person', 'facts'].includes(event.kind) ? 'a fingerprint, so that a change shows' : event.detail))))));
}

/** Sales book: every event, newest first; the table of a year for the shop's own books. */
export async function bookRoom(place, { desk }) {
  const trouble = el('div', {});
  const out = el('div', {});
  const now = new Date().getUTCFullYear();
  const years = Array.from({ length: 8 }, (unused, back) => String(now - back));
  const kind = choice('What', 'kind', [['', 'everything'], ...KINDS], '');
  const year = choice('Year', 'year', [['', 'all'], ...years], '');
  const value = (node) => node.querySelector('select').value;
  const draw = async () => {
    const found = await guarded(trouble, () => get('api/book', { kind: value(kind), y: value(year) }));
    if (found) {
      out.replaceChildren(found.events.length ? table(found.events) : el('p', { class: 'quiet' }, 'Nothing of this kind.'),
        found.events.length === found.most ? el('p', { class: 'quiet' }, `The newest ${found.most}.`) : '');
    }
  };
  const csv = async () => {
    const wanted = value(year) || String(now);
    const answer = await guarded(trouble, () => get('api/year', { y: wanted }));
    if (answer) {
      saveText(answer.text, answer.fileName);
    }
  };
  [kind, year].forEach((node) => node.addEventListener('change', draw));
  place.append(
    desk.breaks.length ? '' : goodNotice(`The book is whole. Events: ${desk.events}, signed up to number ${desk.signedUpTo}.`),
    el('div', { class: 'fields' }, kind, year, el('p', {}, button({ text: 'Table of the year (CSV)', sign: 'save', onClick: csv }))),
    trouble, out);
  await draw();
}
