import { get, post } from '../js/api.js';
import { button, el } from '../js/dom.js';
import { field, form } from './forms.js';
import { folderField } from './folder.js';
import { errorNotice, goodNotice, guarded } from './notice.js';
import { sendBytes } from './send.js';

function backupForm(safe) {
  const out = el('div', {});
  return form({ class: 'sheet', id: 'backup' }, async (typed, node) => {
    const done = await guarded(out, () => sendBytes('api/backup', new TextEncoder().encode(`${typed.folder}\n${typed.passphrase}`)));
    node.elements.passphrase.value = '';
    if (done) {
      out.replaceChildren(goodNotice(`The backup lies in ${done.file} and was read back. Events: ${done.events}, people: ${done.people}.`,
        'Put it on a stick that lives in another house. It opens with the passphrase of today.'));
    }
  },
  el('h2', {}, 'Backup'),
  el('p', {}, 'One encrypted file: the keys, the sales book, what packing remembers. Made while you work.'),
  el('p', { class: 'quiet' }, safe.daysAgo === null ? 'None was made yet.' : `The last one: ${safe.last}, ${safe.daysAgo} days ago.`),
  folderField('Folder', 'folder', safe.folder, 'a stick, or a folder that is copied elsewhere'),
  field('Passphrase', { name: 'passphrase', type: 'password', required: true, autocomplete: 'current-password' }),
  el('p', {}, el('button', { type: 'submit', class: 'main' }, 'Make a backup')), out);
}

function passphraseForm() {
  const out = el('div', {});
  return form({ class: 'sheet', id: 'passphrase' }, async (typed, node) => {
    if (typed.fresh !== typed.again) {
      out.replaceChildren(errorNotice({ happened: 'The two new passphrases differ.', safe: 'Nothing was changed.', next: 'Type them again.' }));
      return;
    }
    const done = await guarded(out, () => sendBytes('api/passphrase', new TextEncoder().encode(`${typed.old}\n${typed.fresh}`)));
    node.reset();
    if (done) {
      out.replaceChildren(goodNotice('The desk opens with the new passphrase from now on. Older backups open with the old one.'));
    }
  },
  el('h2', {}, 'Another passphrase'),
  el('div', { class: 'fields' },
    field('Passphrase now', { name: 'old', type: 'password', required: true, autocomplete: 'current-password' }),
    field('New', { name: 'fresh', type: 'password', required: true, minlength: 12, autocomplete: 'new-password' }, '12 characters or more'),
    field('New, once more', { name: 'again', type: 'password', required: true, autocomplete: 'new-password' })),
  el('p', {}, el('button', { type: 'submit' }, 'Change')), out);
}

function closingSheet() {
  const out = el('div', { 'aria-live': 'polite' });
  const rehearse = button({
    text: 'Rehearse the closing',
    onClick: async () => {
      const found = await guarded(out, () => post('api/closing/rehearse'));
      if (found) {
        out.replaceChildren(el('ul', {}, found.editions.map((one) => el('li', {}, one.opens
          ? `${one.title} opens with the closing key alone: ${one.lessons} lessons.`
          : `${one.folder} does not open: ${one.trouble}`))),
        goodNotice(found.editions.length ? 'Nothing was published.' : 'No edition of this desk lies where it was packed; nothing was tried.'));
      }
    },
  });
  return el('section', { class: 'sheet', id: 'closing' }, el('h2', {}, 'Closing the shop'),
    el('p', {}, 'When nobody can answer laptop cards any more, the closing key opens every copy for everybody, for ever. '
      + 'It is written by the command "close" only, because it cannot be taken back.'),
    el('p', { class: 'quiet' }, 'Print the page for the person who looks after your course one day: close --heir-page FILE.'),
    el('p', {}, rehearse), out);
}

/** Keep safe: the backup, the passphrase, and where the envelopes come in. */
export async function safeRoom(place, { desk }) {
  const safe = await get('api/safe');
  place.append(backupForm(safe), passphraseForm(), closingSheet(),
    el('section', { class: 'sheet' }, el('h2', {}, 'The envelopes'),
      el('p', {}, 'Any two of your three spare-key envelopes rebuild this desk when everything else is lost. '
        + 'Look once a year whether all three are where you put them.'),
      el('p', { class: 'quiet' }, `The words of your shop: ${desk.words.join(' ')}`)));
}
