import { address, get, post } from '../api.js';
import { button, el } from '../dom.js';
import { textField } from '../fields.js';
import { errorNotice } from '../notice.js';
import { several } from '../units.js';

/** What can be done with the plan as a whole: name, copies, versions, files. */

async function fetchMade(id, kind) {
  const { address: made } = await post(`api/plans/${id}/${kind}`);
  el('a', { href: address(made), download: '' }).click();
}

function versionRow(version, onBack) {
  return el('li', {}, `${new Date(version.at_millis).toLocaleString()}, ${several(version.subjects, 'subject')} `,
    button({ text: 'Go back to this', kind: 'bare', onClick: () => onBack(version.number), 'aria-label': `Go back to version ${version.number}` }));
}

export function showFileCard(place, record, getPlan, on) {
  const list = el('ol', { reversed: true, id: 'versions' });
  const said = el('div', { role: 'status' });
  const safely = (work) => async () => {
    try {
      await on.flush();
      await work();
    } catch (error) {
      said.replaceChildren(errorNotice(error));
    }
  };
  const show = ({ versions }) => list.replaceChildren(...versions.map((one) => versionRow(one, (number) => safely(async () => {
    on.restored(await post(`api/plans/${record.id}/restore`, { number }));
  })())));
  const act = (text, work) => button({ text, onClick: safely(work) });
  const sheets = el('a', { class: 'button main', id: 'to-sheets', href: address('ui/sheets.html', { p: record.id }) }, 'Templates, cut list, shopping');
  sheets.addEventListener('click', () => on.flush());
  place.replaceChildren(
    textField({ id: 'plan-name', label: 'Name', value: getPlan().name, onChange: (value) => on.rename(value) }),
    el('p', { class: 'row' }, sheets),
    el('p', { class: 'row' },
      act('Keep this version', async () => show(await post(`api/plans/${record.id}/version`))),
      act('Duplicate', async () => window.location.assign(address('ui/plan.html', { p: (await post(`api/plans/${record.id}/duplicate`)).id }))),
      act('Save as one file', () => fetchMade(record.id, 'file')),
      act('Save for a course', () => fetchMade(record.id, 'course'))),
    el('p', { class: 'hint' }, 'One file holds the plan and its picture. The file for a course, .layers.yaml, goes without the picture.'),
    said, el('h3', {}, 'Earlier versions'), list);
  get(`api/plans/${record.id}/versions`).then(show).catch((error) => said.replaceChildren(errorNotice(error)));
}
