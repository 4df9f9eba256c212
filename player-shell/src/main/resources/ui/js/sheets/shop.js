import { get, post } from '../api.js';
import { byId, el } from '../dom.js';
import { codeDrawing } from '../code.js';
import { saveText } from '../save-text.js';
import { shopping } from './lists.js';

/** The shopping list: the lesson's rows in the student's format, less the drawer, at own prices. */

export const supplyKey = (row) => `${row.item}|${row.unit}`.toLowerCase();

const dayOf = (millis) => new Date(millis).toLocaleDateString();

/** What the bench is asked for the list. */
export const supplyQuestion = ({ own, rows, drawer }) => ({
  pieces: own.pieces, sheets: own.sheets, sheet_mm: [own.width, own.height], firings: own.firings,
  rows: rows.map((row) => {
    const { at_hand: hand, pack, price } = drawer[supplyKey(row)] || {};
    return { ...row, ...(hand === undefined ? {} : { at_hand: hand }), ...(pack === undefined ? {} : { pack }), ...(price === undefined ? {} : { price }) };
  }),
});

/** What is in the drawer and what things cost, as it was typed on any day before. */
export async function loadDrawer() {
  const { supplies } = await get('api/supplies');
  return Object.fromEntries(supplies.map(({ item, ...known }) => [item, known]));
}

function costWords(answer) {
  const open = answer.unpriced.length ? ` No price yet: ${answer.unpriced.join(', ')}.` : '';
  if (!answer.cost) {
    return `Type your own prices to know what it costs.${open}`;
  }
  const each = answer.pieces > 1 ? `, ${answer.cost_per_piece} for each of ${answer.pieces} pieces` : '';
  return `What has a price comes to ${answer.cost}${each}.${open}`;
}

function oldest(drawer, rows) {
  const days = rows.map((row) => drawer[supplyKey(row)]).filter((known) => known && known.price !== undefined && known.changedAtMillis).map((known) => known.changedAtMillis);
  return days.length ? ` The oldest of these prices is of ${dayOf(Math.min(...days))}.` : '';
}

/** Shows the list; what is typed beside a line is kept for the next list. */
export async function showShopping(state, fail) {
  const { rows, drawer } = state;
  if (!rows.length) {
    byId('shop').replaceChildren(el('p', {}, 'This plan comes without a materials list.'));
    return;
  }
  const answer = await post('api/sheets/supplies', supplyQuestion(state));
  if (answer.problem) {
    byId('shop').replaceChildren(el('p', { class: 'notice care' }, answer.problem.message));
    return;
  }
  const onOwn = async (key, name, value) => {
    const focused = document.activeElement && document.activeElement.getAttribute('aria-label');
    drawer[key] = { ...(drawer[key] || {}), [name]: value, changedAtMillis: Date.now() };
    const { changedAtMillis, ...known } = drawer[key];
    try {
      const kept = await post('api/supplies', { item: key, ...known });
      if (kept.problem) {
        throw Object.assign(new Error(kept.problem.message), { happened: kept.problem.message, next: 'Type it again.' });
      }
      await showShopping(state, fail);
      const again = Array.from(document.querySelectorAll('#shop input')).find((input) => input.getAttribute('aria-label') === focused);
      if (again) {
        again.focus();
      }
    } catch (error) {
      fail(error);
    }
  };
  byId('shop').replaceChildren(shopping(answer, onOwn, drawer),
    el('p', { id: 'shop-cost' }, costWords(answer), oldest(drawer, rows)),
    el('div', { class: 'row' }, el('button', { type: 'button', on: { click: () => saveText(answer.text, 'Shopping list.txt') } }, 'Save what to buy')),
    answer.codes.length ? el('details', { id: 'shop-codes' }, el('summary', {}, 'For the phone'),
      el('p', { class: 'hint' }, 'Point the phone’s camera at each code; it shows the lines as text. Nothing is sent anywhere.'),
      el('div', { class: 'codes' }, answer.codes.map((code, at) => codeDrawing(code, `What to buy as a code for a phone, ${at + 1} of ${answer.codes.length}`)))) : '');
}
