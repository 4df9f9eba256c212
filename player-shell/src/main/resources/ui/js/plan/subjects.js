import { button, el } from '../dom.js';
import { numberField, selectField } from '../fields.js';

/** The subjects, nearest first: name, how near, redraw, remove. */

const EVIDENCE = [['rank', 'from its place in this list'], ['height', 'from its true height'], ['ground', 'it stands on the ground'], ['distance', 'I know the distance']];

const evidenceOf = (one) => {
  if (one.distance_m) {
    return 'distance';
  }
  return one.real_height_m ? 'height' : one.on_ground ? 'ground' : 'rank';
};

const patchFor = {
  rank: { distance_m: undefined, real_height_m: undefined, on_ground: undefined },
  height: { distance_m: undefined, real_height_m: 1, on_ground: undefined },
  ground: { distance_m: undefined, real_height_m: undefined, on_ground: true },
  distance: { distance_m: 5, real_height_m: undefined, on_ground: undefined },
};

function evidence(one, at, on, settings) {
  const kind = evidenceOf(one);
  const metres = (key, label) => numberField({ id: `near-value-${at}`, label, kind: 'm', min: 0.01, max: 100000, value: one[key], onChange: (value) => on.change(one.name, { [key]: value }) }, settings);
  return [
    selectField({ id: `near-${at}`, label: 'How near', options: EVIDENCE, value: kind, onChange: (value) => on.change(one.name, patchFor[value], true) }),
    kind === 'height' ? metres('real_height_m', 'True height') : null,
    kind === 'distance' ? metres('distance_m', 'Distance') : null,
  ];
}

function row(one, at, all, on, settings) {
  const name = el('input', { type: 'text', id: `subject-${at}`, value: one.name, maxlength: 60, 'aria-label': `Name of subject ${at + 1}` });
  name.addEventListener('change', () => on.rename(one.name, name.value));
  name.addEventListener('keydown', (event) => event.key === 'Enter' && on.named());
  name.addEventListener('focus', () => on.choose(one.name));
  const small = (text, label, onClick, disabled) => button({ text, kind: 'bare', onClick, 'aria-label': `${label}: ${one.name}`, disabled });
  return el('li', { class: 'subject', 'data-name': one.name },
    el('div', { class: 'row' }, el('span', { class: 'name' }, name),
      small('↑', 'Nearer', () => on.shift(one.name, -1), at === 0),
      small('↓', 'Farther', () => on.shift(one.name, 1), at === all.length - 1)),
    el('div', { class: 'row' }, evidence(one, at, on, settings)),
    el('div', { class: 'row' },
      small('Draw again', 'Draw again', () => on.redraw(one.name)),
      small('Remove', 'Remove', () => on.remove(one.name)),
      one.pin ? small(`Held on sheet ${one.pin}: let go`, 'Let go', () => on.change(one.name, { pin: undefined }, true)) : null));
}

export function showSubjects(place, plan, on, settings) {
  place.replaceChildren(...plan.subjects.map((one, at) => row(one, at, plan.subjects, on, settings)));
}

/** Overlaps: what was told, and what is taken to be so until somebody tells. */
export function showFronts(place, plan, answer, onTold) {
  const told = plan.subjects.flatMap((one) => (one.in_front_of || []).map((back) => [one.name, back, true]));
  const assumed = (answer ? answer.assumed_in_front : []).map(([front, back]) => [front, back, false]);
  const pairs = [...assumed, ...told];
  place.replaceChildren(...(pairs.length ? [el('h3', {}, 'Which hides which?')] : []),
    ...pairs.map(([front, back, sure]) => el('div', { class: 'front-pair' },
      el('span', {}, el('strong', {}, front), sure ? ' is in front of ' : ' is taken to be in front of ', el('strong', {}, back)),
      sure ? null : button({ text: 'Yes', onClick: () => onTold(front, back), 'aria-label': `Yes, ${front} is in front of ${back}` }),
      button({ text: 'The other way round', kind: 'bare', onClick: () => onTold(back, front), 'aria-label': `No, ${back} is in front of ${front}` }))));
}
