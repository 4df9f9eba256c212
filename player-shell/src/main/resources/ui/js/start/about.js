import { button, el } from '../dom.js';
import { several } from '../units.js';
import { giveBackFacts } from './give-back.js';
import { askForPlace, passedAgain } from './move.js';

function laptopFacts(laptop) {
  if (!laptop || !laptop.traits) {
    return null;
  }
  const { same = 0, changed = 0, absent = 0 } = laptop.traits;
  const counted = [].concat(same).length > 1 || Array.isArray(same)
    ? [same.length, changed.length, absent.length] : [same, changed, absent];
  const seen = counted[0] + counted[1] + counted[2];
  return el('div', {},
    el('h2', {}, 'How this laptop is recognised'),
    el('p', {}, laptop.recognised
      ? `It is recognised: ${counted[0]} of ${several(seen, 'trait')} are as they were.`
      : seen ? `It is not recognised now: only ${counted[0]} of ${several(seen, 'trait')} are as they were.` : 'Nothing is bound to this laptop yet.'));
}

function teacherFacts(statements) {
  if (!statements || !statements.length) {
    return null;
  }
  return el('div', {},
    el('h2', {}, 'Teachers known here'),
    el('ul', {}, statements.map((teacher) => el('li', {},
      `${teacher.name}: `, el('strong', {}, (teacher.words || []).join(' ')))),
    ),
    el('p', {}, 'Compare the five words with those printed on your envelope.'));
}

function moveFacts({ licenses }) {
  const trouble = el('div', {});
  const gone = licenses.filter((license) => license.state === 'passed');
  return el('div', {},
    el('h2', {}, 'Move to another laptop'),
    el('p', {}, 'Is this the new laptop? It asks the old one for its place, without your teacher and without the internet.'),
    button({ text: 'Ask for a place', sign: 'next', onClick: () => askForPlace(trouble) }),
    gone.map((license) => el('p', {}, button({
      text: `The file of ${license.name} again`, onClick: () => passedAgain(license.id, trouble) }))),
    trouble);
}

/** Facts one needs rarely, kept below everything else. */
export function renderAbout(place, bench, refresh) {
  place.replaceChildren(el('div', { class: 'facts' },
    laptopFacts(bench.laptop),
    teacherFacts(bench.statements),
    moveFacts(bench),
    giveBackFacts(bench, refresh),
    el('div', {},
      el('h2', {}, 'This program'),
      el('p', {}, el('a', { href: 'ui/trial.html' }, 'Try this laptop'), ': does it play a course, hear, see and print?'),
      el('p', {}, `Lehrcase ${bench.version || ''}. It works without the internet and asks nobody.`),
      bench.home ? el('p', {}, 'Your own data is kept in ', el('span', { class: 'path' }, bench.home)) : null)));
}
