import { address, dropFile, get, post } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { several } from '../units.js';
import { bringPicture, isPlanFile, nameOf } from './bring.js';
import { begin } from './model.js';

/** What a student has planned, and how a new plan begins: with a picture, or with a file. */

const go = (id) => window.location.assign(address('ui/plan.html', { p: id }));
const when = (millis) => new Date(millis).toLocaleString();

export async function takeFile(file, place) {
  place.replaceChildren(el('p', { class: 'notice', role: 'status' }, `Opening ${file.name} …`));
  try {
    const answer = isPlanFile(file.name)
      ? await dropFile(file, file.name, 'api/plans/import')
      : await post('api/plans', { plan: begin(await bringPicture(file), nameOf(file)) });
    if (answer.problem) {
      throw { happened: `${file.name} is no plan of sheets: ${answer.problem.message}.`, safe: 'Nothing was changed.', next: 'Choose a file that ends with .plan.json or .layers.yaml.' }; // eslint-disable-line no-throw-literal
    }
    go(answer.id);
  } catch (error) {
    place.replaceChildren(errorNotice(error));
  }
}

function card(plan, again) {
  const name = el('strong', {}, plan.name);
  const act = (path, then) => async () => {
    await post(`api/plans/${plan.id}/${path}`);
    then();
  };
  const forget = () => {
    if (window.confirm(`Throw "${plan.name}" away, with its versions?`)) {
      act('forget', again)();
    }
  };
  return el('li', {},
    el('a', { href: address('ui/plan.html', { p: plan.id }) },
      plan.picture ? el('img', { src: address(`print/picture/${plan.picture}`), alt: '', loading: 'lazy' }) : null, name),
    el('p', { class: 'small-print' }, `${several(plan.subjects, 'subject')}, ${several(plan.sheets || 1, 'sheet')}, ${when(plan.changed_at_millis)}`),
    el('div', { class: 'row' },
      button({ text: 'Duplicate', kind: 'bare', onClick: act('duplicate', again), label: null }),
      button({ text: 'Throw away', kind: 'bare', onClick: forget })));
}

export async function showShelf(place, trouble) {
  const { plans } = await get('api/plans');
  const input = el('input', { id: 'bring-file', class: 'heard', type: 'file', accept: 'image/*,.heic,.heif,.plan.json,.json,.yaml' });
  input.addEventListener('change', () => input.files[0] && takeFile(input.files[0], trouble));
  const bring = el('div', { class: 'bring' },
    el('h2', {}, 'Bring a picture'),
    el('p', {}, 'Drop it here, or choose it. It stays on this laptop; camera and place are taken out of it.'),
    el('label', { class: 'button main' }, 'Choose a picture or a plan', input));
  bring.addEventListener('dragover', (event) => { event.preventDefault(); bring.classList.add('over'); });
  bring.addEventListener('dragleave', () => bring.classList.remove('over'));
  bring.addEventListener('drop', (event) => {
    event.preventDefault();
    bring.classList.remove('over');
    if (event.dataTransfer.files[0]) {
      takeFile(event.dataTransfer.files[0], trouble);
    }
  });
  const again = () => showShelf(place, trouble);
  place.replaceChildren(bring, plans.length ? el('h2', {}, 'My plans') : '', el('ul', { class: 'plan-list' }, plans.map((plan) => card(plan, again))));
  place.hidden = false;
}
