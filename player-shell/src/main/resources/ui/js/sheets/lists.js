import { el } from '../dom.js';
import { length } from '../units.js';

const percent = (share) => (share === undefined ? '' : `${Math.round(100 * share)} %`);
const cell = (text) => el('td', { class: 'number' }, text);
const head = (...names) => el('thead', {}, el('tr', {}, names.map((name, at) => el('th', { scope: 'col', class: at > 1 ? 'number' : null }, name))));

/** Scale, contrast, paint and edges, sheet by sheet. */
export function sheetTable(answer, unit) {
  return el('table', { class: 'list' },
    head('Sheet', 'Subjects', 'Painted size', 'Contrast', 'Paint', 'Tones', 'Past the edge', 'Behind outlines'),
    el('tbody', {}, answer.sheet_list.map((one) => el('tr', {},
      el('th', { scope: 'row' }, String(one.sheet)), el('td', {}, one.subjects.join(', ') || 'clear'),
      cell(percent(one.scale)), cell(percent(one.contrast)), cell(percent(one.film)), cell(String(one.tones || '')),
      cell(length(one.margin_mm || 0, unit)), cell(length(one.tuck_under_mm || 0, unit))))));
}

/** What to know: moved depths, warnings, what one sheet more brings. */
export function notes(answer, moved) {
  const lines = [...answer.moved.filter((move) => move.noticeable).map((move) => move.message), ...answer.warnings];
  lines.push(`Sizes within a sheet are at most ${Math.round(answer.worst_size_percent)} % off.`);
  if (moved) {
    return lines.map((line) => el('li', {}, line)); // with subjects held in place the figures below say nothing
  }
  const more = answer.choices.find((one) => one.sheets === answer.sheets + 1);
  if (more) {
    lines.push(`With ${more.sheets} sheets it would be ${Math.round(more.worst_size_percent)} %.`);
  }
  lines.push(`At least ${answer.fewest.ordered} sheets are needed.`);
  return lines.map((line) => el('li', {}, line));
}

/** The stack, its dams, and what is wrong with them. */
export function dams(block, unit) {
  const both = (pair) => pair.map((mm) => length(mm, unit)).join(' × ');
  const row = (name, value) => el('tr', {}, el('th', { scope: 'row' }, name), cell(value));
  return [
    el('table', { class: 'list' }, el('tbody', {},
      row('Unfired pile', length(block.pile_mm, unit)),
      row('Fused', `${length(block.fused_mm, unit)}; ${length(block.fused_if_liner_gives_way_mm, unit)} if the liner gives way`),
      row('Weight', `${Math.round(block.weight_g)} g`),
      row('Dam to dam', both(block.bed_mm)),
      row('Strips, two of each', block.strips_mm.map((mm) => length(mm, unit)).join(' and ')),
      row('Room on the shelf', both(block.footprint_mm)),
      row('Dams at least', `${length(block.least_dam_mm, unit)} high`),
      row('Liner', `${length(block.liner_height_mm, unit)} high`))),
    ...block.troubles.map((text) => el('p', { class: 'notice care' }, text)),
  ];
}

/** The shopping list; what is in the drawer is typed beside each line. */
export function shopping(answer, onOwn, own) {
  const field = (line, name, label) => {
    const key = `${line.item}|${line.unit}`.toLowerCase();
    const input = el('input', { type: 'number', min: 0, step: 'any', 'aria-label': `${label}: ${line.item}`, value: (own[key] || {})[name] ?? '' });
    input.addEventListener('change', () => onOwn(key, name, input.value === '' ? undefined : Number(input.value)));
    return el('td', {}, input);
  };
  return el('table', { class: 'list' },
    el('thead', {}, el('tr', {}, ['What', 'Needed', 'In the drawer', 'Packs of', 'Price', 'To buy', 'Cost'].map((name) => el('th', { scope: 'col' }, name)))),
    el('tbody', {}, answer.lines.map((line) => el('tr', {},
      el('th', { scope: 'row' }, line.item, line.itemNo ? ` no. ${line.itemNo}` : ''),
      cell(line.needed === null ? 'as needed' : `${line.needed} ${line.unit}`),
      field(line, 'at_hand', 'In the drawer'), field(line, 'pack', 'Sold in packs of'), field(line, 'price', 'Price of a pack, or of one'),
      cell(line.to_buy === null ? '' : `${line.to_buy} ${line.unit}`), cell(line.cost === null ? '' : String(line.cost))))));
}
