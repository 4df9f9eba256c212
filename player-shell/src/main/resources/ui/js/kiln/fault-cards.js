import { get } from '../api.js';
import { el } from '../dom.js';
import { proseFrom } from '../prose.js';

/** The teacher's fault cards of the lesson that a firing follows; nothing if there is no lesson here. */
export async function faultCards(firing) {
  const { e, l } = firing.setup.place || {};
  if (!e || !l) {
    return null;
  }
  try {
    const lesson = await get('api/lesson', { e, l });
    const cards = lesson.papers.filter((paper) => paper.role === 'FAULT_CARD');
    return cards.length ? el('div', {}, el('h3', {}, 'Your teacher’s fault cards'), cards.map((card) => {
      const body = el('div', { class: 'prose' });
      const details = el('details', {}, el('summary', {}, card.title), body);
      details.addEventListener('toggle', async () => {
        if (details.open && !body.hasChildNodes()) {
          const { html } = await get('api/markdown', { e, a: card.asset });
          body.replaceChildren(...proseFrom(html));
        }
      });
      return details;
    })) : null;
  } catch (notHere) {
    return el('p', { class: 'quiet' }, 'The lesson of this firing is not here now; its fault cards come with its stick.');
  }
}
