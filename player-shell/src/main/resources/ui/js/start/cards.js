import { post } from '../api.js';
import { codesView } from '../code.js';
import { button, el, icon } from '../dom.js';
import { guarded } from '../notice.js';
import { openPanel } from '../panel.js';
import { saveText } from '../save-text.js';
import { several } from '../units.js';
import { chooseFile } from './drop.js';

function showCard(card) {
  const said = el('p', { role: 'status' });
  const copy = () => navigator.clipboard.writeText(card.text).then(
    () => { said.textContent = 'Copied. Paste it into a message to your teacher.'; },
    () => { said.textContent = 'This browser does not allow copying: mark the text and copy it by hand.'; });
  openPanel('This laptop card',
    el('p', {}, 'Send it to your teacher from any phone or computer. It says how this laptop is recognised; it holds no password and opens nothing by itself.'),
    el('div', { class: 'row' },
      button({ text: 'Save as a file', sign: 'save', kind: 'main', onClick: () => saveText(card.text, card.fileName) }),
      button({ text: 'Copy the text', onClick: copy })),
    said,
    el('div', { class: 'slip-sides' },
      el('pre', { class: 'card-text', tabindex: '0', 'aria-label': 'Text of the card' }, card.text),
      codesView(card.codes, 'This laptop card as a code', 'The same as a code: photograph it and send the picture.')));
}

function card({ title, sign, text, state, done, action, more }) {
  return el('article', { class: done ? 'card done' : 'card' },
    el('h3', {}, icon(done ? 'check' : sign), title),
    el('p', {}, text),
    el('p', { class: 'card-state' }, state),
    more || null,
    el('div', { class: 'row' }, action));
}

const LICENSE_STATES = {
  noCard: 'next: send this laptop card',
  asked: 'the card is made; waiting for the key letter',
  active: 'open on this laptop',
  shut: 'this laptop is not recognised now',
  passed: 'its place has moved to another laptop',
  givenBack: 'its place was given back; send the slip to your teacher',
};

function seriesTitle(series, courses) {
  const course = courses.find((candidate) => candidate.series === series);
  return course ? course.title : series;
}

const licenseWords = (license, courses) =>
  `${license.name}: ${[].concat(license.series).map((one) => seriesTitle(one, courses)).join(', ')} (${several(license.places, 'place')}), ${LICENSE_STATES[license.state] || license.state}`;

function licenseCard({ licenses, courses }, refresh) {
  return card({
    title: 'This is my license',
    sign: 'license',
    text: 'A short text your teacher sent when you bought the course.',
    state: licenses.length ? licenses.map((license) => licenseWords(license, courses)).join('; ') : 'Not handed over yet.',
    done: licenses.length > 0,
    action: button({ text: licenses.length ? 'Add another license' : 'Choose the license', onClick: () => chooseFile(refresh) }),
  });
}

function laptopCard(bench, refresh) {
  const waiting = bench.licenses.find((license) => ['noCard', 'asked', 'shut', 'givenBack'].includes(license.state));
  const made = Boolean(bench.waiting && bench.waiting.cardMade) || bench.licenses.some((l) => l.state === 'asked');
  const active = bench.licenses.length > 0 && !waiting;
  const trouble = el('div', {});
  const make = () => guarded(trouble, async () => {
    showCard(await post('api/card', waiting ? { license: waiting.id } : {}));
    refresh();
  });
  return card({
    title: 'Send this laptop card',
    sign: 'card',
    text: 'What this laptop says about itself. Save it to a stick or copy it, and send it to your teacher.',
    state: active ? 'Answered: nothing to send.' : made ? 'Made. It stays valid while you wait.' : 'Not made yet.',
    done: active || made,
    more: trouble,
    action: button({ text: made ? 'Show the card again' : 'Make the card', kind: made || active ? null : 'main', onClick: make }),
  });
}

function letterCard(licenses, refresh) {
  const active = licenses.filter((license) => license.state === 'active');
  return card({
    title: 'Here is my key letter',
    sign: 'letter',
    text: 'The answer to the laptop card. It opens your courses on this laptop only, and never runs out.',
    state: active.length ? `${several(active.length, 'license')} open on this laptop.` : 'Not handed over yet.',
    done: active.length > 0,
    action: button({ text: 'Choose the key letter', onClick: () => chooseFile(refresh) }),
  });
}

/** Three cards that can be done in any order, each with its own state. */
export function renderCards(place, bench, refresh) {
  place.replaceChildren(
    licenseCard(bench, refresh),
    laptopCard(bench, refresh),
    letterCard(bench.licenses, refresh));
}
