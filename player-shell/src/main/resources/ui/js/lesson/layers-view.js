import { address, post } from '../api.js';
import { button, el, icon } from '../dom.js';
import { guarded } from '../notice.js';
import { asOwn } from '../plan/model.js';
import { readPlan } from '../sheets/plan.js';

/** The teacher's plan of sheets beside the picture: what lies where; the page for one's own format opens from here. */
export async function showLayers(body, paper, store) {
  const { lesson } = store.getState();
  const toSheets = el('a', {
    class: 'button main', id: 'to-sheets', href: address('ui/sheets.html', { e: lesson.edition, l: lesson.lesson.id, a: paper.id }),
  }, icon('template'), 'For my format: templates, cut list, shopping');
  const response = await fetch(address(paper.url));
  let answer;
  let plan;
  try {
    plan = readPlan(await response.text());
    answer = await post('api/sheets/plan', plan);
  } catch (notAPlan) {
    body.replaceChildren(el('p', { class: 'notice care' }, 'This plan of sheets cannot be read. Ask your teacher for a corrected one; the rest of the lesson works.'));
    return { pages: 0 };
  }
  const why = answer.problem || answer.impossible;
  body.replaceChildren(why ? el('p', { class: 'notice care' }, why.message) : el('table', { class: 'list' },
    el('thead', {}, el('tr', {}, ['Sheet', 'Subjects', 'Size', 'Contrast'].map((name) => el('th', { scope: 'col' }, name)))),
    el('tbody', {}, answer.sheet_list.map((one) => el('tr', {},
      el('th', { scope: 'row' }, String(one.sheet)), el('td', {}, one.subjects.join(', ') || 'clear'),
      el('td', { class: 'number' }, one.scale ? `${Math.round(100 * one.scale)} %` : ''),
      el('td', { class: 'number' }, one.contrast ? `${Math.round(100 * one.contrast)} %` : ''))))));
  const own = button({ text: 'Make it my own plan', id: 'own-plan', onClick: () => guarded(said, async () => {
    const made = await post('api/plans', { plan: asOwn(plan, paper.name || lesson.lesson.title) });
    window.location.assign(address('ui/plan.html', { p: made.id }));
  }) });
  const said = el('div', {});
  body.append(el('p', { class: 'row' }, toSheets, own), said);
  return { pages: 0 };
}
