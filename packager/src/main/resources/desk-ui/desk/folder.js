import { get } from '../js/api.js';
import { button, el } from '../js/dom.js';
import { guarded } from './notice.js';

/** A place on this computer: typed, or chosen step by step. */
export function folderField(label, name, value, hint) {
  const input = el('input', { type: 'text', name, id: `folder-${name}`, value: value || '', required: true, spellcheck: 'false', autocomplete: 'off' });
  const chooser = el('div', {});
  const go = async (at) => {
    const trouble = el('div', {});
    const list = await guarded(trouble, () => get('api/folders', { at }));
    if (!list) {
      chooser.replaceChildren(trouble);
      return;
    }
    chooser.replaceChildren(el('div', { class: 'sheet' },
      el('p', { class: 'path' }, list.at),
      el('ul', { class: 'folders' },
        list.up ? el('li', {}, button({ text: 'One up', sign: 'back', onClick: () => go(list.up) })) : null,
        list.folders.map((one) => el('li', {}, button({ text: one.name, onClick: () => go(one.path) })))),
      el('div', { class: 'row' },
        button({ text: 'Take this folder', kind: 'main', onClick: () => { input.value = list.at; chooser.replaceChildren(); } }),
        button({ text: 'Close', kind: 'bare', onClick: () => chooser.replaceChildren() }))));
  };
  return el('div', { class: 'field' }, el('label', { for: input.id }, el('strong', {}, label)),
    el('div', { class: 'path-row' }, input, button({ text: 'Look', onClick: () => go(input.value) })),
    hint ? el('small', {}, hint) : null, chooser);
}
