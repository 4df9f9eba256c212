import { el } from '../js/dom.js';
import { field, form } from './forms.js';
import { guarded } from './notice.js';
import { sendBytes } from './send.js';

/** Asks for the passphrase; nothing of the shop is shown before. */
export function gate(place, desk, onOpen) {
  const trouble = el('div', {});
  const press = el('button', { type: 'submit', class: 'main' }, 'Open the desk');
  const sheet = form({ class: 'sheet gate', id: 'gate' }, async (typed, node) => {
    press.disabled = true;
    press.textContent = 'Opening …';
    const opened = await guarded(trouble, () => sendBytes('api/unlock', new TextEncoder().encode(typed.passphrase)));
    press.disabled = false;
    press.textContent = 'Open the desk';
    node.reset();
    if (opened) {
      onOpen(opened);
    } else {
      node.querySelector('input').focus();
    }
  },
  el('h1', {}, 'Open the desk'),
  el('p', {}, `${desk.shop} · ${desk.words.join(' ')}`),
  field('Passphrase', { type: 'password', name: 'passphrase', required: true, autocomplete: 'current-password' },
    'It stays on this computer and is kept nowhere.'),
  trouble, press);
  place.replaceChildren(sheet);
  sheet.querySelector('input').focus();
}
