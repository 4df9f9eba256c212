import { post } from '../js/api.js';
import { el } from '../js/dom.js';
import { choice, field, form, values } from './forms.js';
import { goodNotice, guarded } from './notice.js';
import { sendBytes } from './send.js';

const MEANINGS = [['name', 'Name, or first name'], ['last', 'Last name'], ['email', 'Address'], ['product', 'What was bought'], ['places', 'Number of laptops']];

function wishOf(node) {
  const typed = values(node);
  return { ...typed, facts: [...node.querySelectorAll('input[name=fact]:checked')].map((box) => box.value) };
}

function rowsTable(rows) {
  return el('div', { class: 'wide' }, el('table', {},
    el('thead', {}, el('tr', {}, ['Line', 'What', 'Name', 'Address', 'Course', 'Why'].map((head) => el('th', { scope: 'col' }, head)))),
    el('tbody', {}, rows.map((row) => el('tr', {},
      [row.line, row.verdict, row.name, row.email, row.series, row.why].map((cell) => el('td', {}, String(cell))))))));
}

function matchForm(read, courses, onDone) {
  const trouble = el('div', {});
  const report = el('div', { id: 'import-report' });
  const columns = [['', '—'], ...read.columns.map((column) => [column, column])];
  const enter = el('button', { type: 'button', class: 'main', hidden: true, id: 'import-enter' }, 'Enter');
  const node = form({ id: 'import-match' }, async () => {
    const looked = await guarded(trouble, () => post(`api/import/${read.id}/look`, wishOf(node)));
    if (looked) {
      enter.hidden = looked.new === 0;
      enter.textContent = `Enter ${looked.new} sales`;
      report.replaceChildren(goodNotice(
        `${looked.new} new, ${looked.duplicate} known already, ${looked.broken} that cannot be read. Nothing was entered yet.`),
      rowsTable(looked.rows));
    }
  },
  read.problems.length ? el('div', { class: 'notice care' }, read.problems.map((line) => el('p', {}, line))) : null,
  el('div', { class: 'fields' },
    MEANINGS.map(([name, words]) => choice(words, name, columns, read.guess[name])),
    choice('Course where none is named', 'series', [['', 'none'], ...courses.map((one) => [one.series, one.title])], ''),
    field('Moves', { name: 'moves', type: 'number', min: 0, max: 23, value: 3 })),
  el('fieldset', { class: 'choices' }, el('legend', {}, 'Keep for the books'),
    read.columns.map((column) => el('label', {}, el('input', { type: 'checkbox', name: 'fact', value: column, checked: read.guess.facts.includes(column) }), column))),
  trouble,
  el('div', { class: 'row' }, el('button', { type: 'submit' }, 'Look it through'), enter), report);
  enter.addEventListener('click', async () => {
    const done = await guarded(trouble, () => post(`api/import/${read.id}/enter`, wishOf(node)));
    if (done) {
      node.replaceChildren(goodNotice(`${done.entered} sales are in the book. Open a person to write the license.`));
      onDone();
    }
  });
  return node;
}

/** A shop's table: read, matched by column, looked through, entered as a whole or not at all. */
export function importSheet(courses, onDone) {
  const trouble = el('div', {});
  const below = el('div', {});
  const input = el('input', { type: 'file', accept: '.csv,.txt,.tsv', id: 'import-file', 'aria-label': 'The table' });
  input.addEventListener('change', async () => {
    const read = await guarded(trouble, () => sendBytes('api/import', input.files[0], input.files[0].name));
    if (read) {
      below.replaceChildren(matchForm(read, courses, onDone));
    }
  });
  return el('section', { class: 'sheet' }, el('h2', {}, 'A table from a shop'),
    el('p', { class: 'quiet' }, 'Any CSV with a header row, to 2,000 rows. It is looked through first; nothing is entered by half.'),
    input, trouble, below);
}
