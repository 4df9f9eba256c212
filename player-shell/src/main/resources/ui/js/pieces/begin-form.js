import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { beginPiece } from './pieces.js';

/** Asks for the name of a new piece; Escape or "Not now" leaves everything as it was. */
export function beginForm({ place, onBegun, onCancel }) {
  const name = el('input', {
    type: 'text', maxlength: 200, required: true, placeholder: 'Its name', 'aria-label': 'Name of the new piece', class: 'piece-name',
  });
  const trouble = el('div', {});
  const form = el('form', { class: 'piece-begin', on: { submit: async (event) => {
    event.preventDefault();
    try {
      onBegun(await beginPiece(name.value, place));
    } catch (error) {
      trouble.replaceChildren(errorNotice(error));
    }
  } } },
  name,
  el('button', { type: 'submit', class: 'main' }, 'Start this piece'),
  button({ text: 'Not now', kind: 'bare', onClick: onCancel }),
  trouble);
  form.addEventListener('keydown', (event) => event.key === 'Escape' && onCancel());
  return { form, focus: () => name.focus() };
}
