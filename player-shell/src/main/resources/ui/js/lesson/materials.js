import { el } from '../dom.js';
import { dustCautions } from './cautions.js';

const PER = { piece: 'a piece', sheet: 'a sheet', area: 'by area', edge: 'by edge', firing: 'a firing', once: 'once' };

const amount = (value) => (typeof value === 'number' ? value.toLocaleString('en', { maximumFractionDigits: 3 }) : String(value || ''));

function row(entry) {
  const small = [entry.note, entry.where ? `from ${entry.where}` : '', entry.itemNo ? `no. ${entry.itemNo}` : ''].filter(Boolean);
  return el('tr', {},
    el('th', { scope: 'row' }, entry.item, small.length ? el('small', {}, small.join(' · ')) : null),
    el('td', { class: 'number' }, `${amount(entry.amount)} ${entry.unit || ''}`.trim()),
    el('td', {}, PER[entry.per] || entry.per || ''));
}

/** A materials list as a table, with the cautions for what is on it. */
export async function showMaterials(body, paper) {
  body.replaceChildren(
    el('table', { class: 'list' },
      el('thead', {}, el('tr', {},
        el('th', { scope: 'col' }, 'What'), el('th', { scope: 'col', class: 'number' }, 'How much'), el('th', { scope: 'col' }, 'For'))),
      el('tbody', {}, (paper.data.rows || []).map(row))),
    dustCautions());
  return { pages: 0 };
}
