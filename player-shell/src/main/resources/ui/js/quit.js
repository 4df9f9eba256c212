import { post } from './api.js';
import { button, el } from './dom.js';

/** Ends the running copy and leaves a plain page that says how to come back. */
export async function quit() {
  await post('api/quit').catch(() => undefined);
  document.body.replaceChildren(el('main', { class: 'farewell' },
    el('h1', {}, 'Lehrcase has stopped'),
    el('p', {}, 'Your place in each lesson is kept. The course stick can be taken out now.'),
    el('p', {}, 'To come back, start Lehrcase from its icon. You can close this page.')));
}

export const quitButton = () => button({ text: 'Quit Lehrcase', sign: 'power', onClick: quit });
