import { get, post } from '../api.js';
import { button, el, icon } from '../dom.js';
import { goodNotice, guarded } from '../notice.js';

/** Editions found on sticks and in named folders, and a field for a folder's place. */
export function stickList(place, refresh, looked) {
  const list = el('ul', { class: 'found' });
  const answer = el('div', { 'aria-live': 'polite' });

  const bringIn = (path) => guarded(answer, async () => {
    const { message } = await post('api/bring-in', { path });
    answer.replaceChildren(goodNotice(message || 'The course is here now.'));
    refresh();
    await look();
  });

  const line = (edition) => el('li', {}, icon('stick'),
    el('div', {}, `${edition.title}, edition ${edition.number}`, el('small', {}, edition.path)),
    edition.known
      ? el('span', { class: 'badge' }, icon('check'), 'in My courses')
      : button({ text: 'Bring in', kind: 'main', 'aria-label': `Bring in ${edition.title}`, onClick: () => bringIn(edition.path) }));

  async function look() {
    await guarded(answer, async () => {
      const { editions } = await get('api/sticks');
      list.replaceChildren(...(editions.length
        ? editions.map(line)
        : [el('li', {}, el('div', {}, 'No course found on the sticks in this laptop.'))]));
    });
    looked();
  }

  const path = el('input', { type: 'text', id: 'folder-place', autocomplete: 'off', spellcheck: 'false' });
  place.append(list, answer,
    el('form', {
      class: 'by-hand',
      on: { submit: (event) => { event.preventDefault(); bringIn(path.value.trim()); } },
    },
    el('label', { for: 'folder-place' }, 'Or the place of a course folder on this laptop', path),
    el('button', { type: 'submit' }, 'Bring in'),
    button({ text: 'Look again', onClick: () => { answer.replaceChildren(); look(); } })));
  look();
  return look;
}
