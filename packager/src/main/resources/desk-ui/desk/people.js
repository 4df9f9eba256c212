import { get, post } from '../js/api.js';
import { button, el } from '../js/dom.js';
import { choice, field, form } from './forms.js';
import { goodNotice, guarded } from './notice.js';
import { mailButtons } from './mail.js';
import { personSheet } from './person.js';
import { importSheet } from './import.js';

const PAUSE_MILLIS = 120;
const FACTS = [['order', 'Order number'], ['net', 'Net'], ['tax', 'Tax'], ['country', 'Country']];

function saleForm(series, onDone) {
  const trouble = el('div', {});
  const result = el('div', {});
  const offered = series.length ? series.map((one) => [one.series, `${one.title} (${one.series})`]) : null;
  if (offered && offered.length > 1) {
    offered.push([series.map((one) => one.series).join(','), 'all of them']);
  }
  const sheet = form({ class: 'sheet', id: 'sale' }, async (typed, node) => {
    const facts = Object.fromEntries(FACTS.map(([name]) => [name, typed[name]]).filter(([, value]) => value));
    const sold = await guarded(trouble, () => post('api/people', { ...typed, gift: typed.gift ? 'true' : '', facts }));
    if (sold) {
      node.reset();
      result.replaceChildren(goodNotice(`The license of ${sold.license.name} is in the book.`),
        mailButtons(sold.mail, () => post(`api/licenses/${sold.license.id}/sent`).catch(() => undefined)));
      onDone();
    }
  },
  el('h2', {}, 'A sale'),
  el('div', { class: 'fields' },
    field('Name', { name: 'name', required: true, maxlength: 100 }),
    field('Address', { name: 'email', type: 'email', required: true }),
    offered ? choice('Course', 'series', offered, offered[0][0]) : field('Series', { name: 'series', required: true }, 'the id in course.yaml'),
    field('Laptops', { name: 'places', type: 'number', min: 1, max: 99, value: 1 }),
    field('Moves', { name: 'moves', type: 'number', min: 0, max: 23, value: 3 }, 'to another laptop, without you')),
  el('details', {}, el('summary', {}, 'For the books'),
    el('div', { class: 'fields' }, FACTS.map(([name, words]) => field(words, { name, maxlength: 200 }))),
    el('label', { class: 'tick' }, el('input', { type: 'checkbox', name: 'gift' }), 'It is a gift')),
  trouble,
  el('p', {}, el('button', { type: 'submit', class: 'main' }, 'Enter the sale')), result);
  return sheet;
}

/** People: search as you type; a sale, and a shop's table, behind a button each. */
export async function peopleRoom(place) {
  const courses = (await get('api/courses')).courses;
  const list = el('div', { id: 'people-list' });
  const count = el('p', { class: 'quiet', id: 'people-count', role: 'status' });
  const find = el('input', { type: 'search', class: 'find', id: 'find', 'aria-label': 'Search people', placeholder: 'Search by name or address', autocomplete: 'off' });
  const extra = el('div', {});
  const trouble = el('div', {});
  let timer = 0;
  let asked = 0;
  const search = async () => {
    asked += 1;
    const mine = asked;
    const found = await guarded(trouble, () => get('api/people', { q: find.value }));
    if (found && mine === asked) {
      count.textContent = found.people.length < found.count ? `${found.people.length} shown of ${found.count}` : `${found.count} people`;
      list.replaceChildren(...found.people.map((person) => personSheet(person, courses, search)));
    }
  };
  find.addEventListener('input', () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(search, PAUSE_MILLIS);
  });
  const open = (what, make) => () => {
    const same = extra.dataset.what === what && extra.children.length;
    extra.dataset.what = what;
    extra.replaceChildren(...(same ? [] : [make()]));
  };
  place.append(
    el('div', { class: 'row' },
      button({ text: 'A sale', sign: 'plus', kind: 'main', onClick: open('sale', () => saleForm(courses, search)) }),
      button({ text: 'A table from a shop', sign: 'page', onClick: open('import', () => importSheet(courses, search)) })),
    el('p', {}), extra, find, count, trouble, list);
  await search();
}
