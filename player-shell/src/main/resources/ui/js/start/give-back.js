import { post } from '../api.js';
import { codesView } from '../code.js';
import { button, el } from '../dom.js';
import { guarded } from '../notice.js';
import { openPanel } from '../panel.js';
import { saveText } from '../save-text.js';

function slipPanel(slip) {
  openPanel('The place was given back',
    el('p', {}, 'This laptop opens the course no longer. Send this slip to your teacher from any phone or computer: the place is free when it arrives there.'),
    el('p', {}, 'It is kept here too: on the start page you can save it again, as often as you like.'),
    el('div', { class: 'row' }, button({ text: 'Save the slip', sign: 'save', kind: 'main', onClick: () => saveText(slip.text, slip.fileName) })),
    el('div', { class: 'slip-sides' },
      el('pre', { class: 'card-text', tabindex: '0', 'aria-label': 'Text of the slip' }, slip.text),
      codesView(slip.codes, 'The slip as a code', 'The same as a code: photograph it and send the picture, one of each code.')));
}

function surePanel(license, refresh) {
  const trouble = el('div', {});
  const sure = el('input', { type: 'checkbox', id: 'give-back-sure' });
  const give = button({
    text: 'Give the place back',
    kind: 'main',
    disabled: true,
    onClick: async () => {
      const slip = await guarded(trouble, () => post('api/give-back', { license: license.id }));
      if (slip) {
        slipPanel(slip);
        refresh();
      }
    },
  });
  sure.addEventListener('change', () => { give.disabled = !sure.checked; });
  openPanel('Give this laptop\'s place back',
    el('p', {}, `${license.name}: ${[].concat(license.series).join(', ')}`),
    el('ul', {},
      el('li', {}, 'This laptop opens the course no longer, from now on. It cannot be undone here.'),
      el('li', {}, 'Your notes, pieces, kilns and firings stay.'),
      el('li', {}, 'Your teacher gets a slip from you; then another laptop can have the place.'),
      el('li', {}, 'If the other laptop is here already, "Move to another laptop" is quicker and needs nobody.')),
    el('label', {}, sure, ' I do not need the course on this laptop any more'),
    trouble, el('div', { class: 'row' }, give));
}

/** Giving a place back: for a laptop that is sold, worn out, or used by somebody else. */
export function giveBackFacts({ licenses }, refresh) {
  const trouble = el('div', {});
  const open = licenses.filter((license) => license.state === 'active');
  const gone = licenses.filter((license) => license.state === 'givenBack');
  if (!open.length && !gone.length) {
    return null;
  }
  const again = async (license) => {
    const slip = await guarded(trouble, () => post('api/give-back/again', { license: license.id }));
    if (slip) {
      slipPanel(slip);
    }
  };
  return el('div', { id: 'give-back' },
    el('h2', {}, 'Give this laptop\'s place back'),
    el('p', {}, 'Before a laptop is sold or thrown away: the course closes here for good, and your teacher can give the place to another laptop of yours.'),
    open.map((license) => el('p', {}, button({ text: `Give back the place of ${license.name}`, onClick: () => surePanel(license, refresh) }))),
    gone.map((license) => el('p', {}, button({ text: `The slip of ${license.name} again`, onClick: () => again(license) }))),
    trouble);
}
