import { address, get, post } from '../api.js';
import { button, el } from '../dom.js';

const load = () => get('api/notebooks');

/** Named notebooks, and what can be taken out of the open one. */
export function connectBooks(place, changed, fail) {
  const said = el('div', { role: 'status' });
  const guard = (action) => () => action().catch(fail);
  const take = (kind) => guard(async () => {
    const { id } = await post('api/notebooks/export', { kind });
    el('a', { href: address(`print/made/${id}`), download: '' }).click();
    said.textContent = 'It lies in the browser\'s downloads: a plain file, which whoever has it can read.';
  });
  const draw = ({ notebooks, open }) => {
    const select = el('select', { id: 'notebook', 'aria-label': 'Notebook' },
      notebooks.map((book) => el('option', { value: book.id, selected: book.id === open }, book.name)));
    select.addEventListener('change', guard(async () => {
      draw(await post(`api/notebooks/${select.value}/open`));
      await changed();
    }));
    const name = el('input', { type: 'text', id: 'notebook-name', maxlength: '60', placeholder: 'name', 'aria-label': 'Name of a notebook' });
    place.replaceChildren(select, name,
      button({ text: 'New', id: 'notebook-new', onClick: guard(async () => {
        draw(await post('api/notebooks', { name: name.value }));
        await changed();
      }) }),
      button({ text: 'Rename', id: 'notebook-rename', onClick: guard(async () => draw(await post(`api/notebooks/${select.value}/name`, { name: name.value }))) }),
      button({ text: 'Save as Markdown and pictures', id: 'export-zip', sign: 'save', onClick: take('zip') }),
      button({ text: 'Save as PDF', id: 'export-pdf', sign: 'print', onClick: take('pdf') }), said);
  };
  load().then(draw).catch(fail);
}
