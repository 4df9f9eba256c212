import { post } from '../api.js';
import { button, el } from '../dom.js';
import { goodNotice, guarded } from '../notice.js';
import { closePanel, openPanel } from '../panel.js';
import { followHere } from '../follow.js';
import { bytes } from '../units.js';

const STOPPED = 'Stopped. What was copied is kept; start again to go on from there.';

/** The lessons as boxes to tick; what cannot be chosen stands there too, with the reason. */
function lessonBoxes(lessons, canTick, why, changed) {
  return el('ul', { class: 'choices' }, lessons.map((lesson) => {
    const box = el('input', { type: 'checkbox', value: lesson.folder, disabled: !canTick(lesson), on: { change: changed } });
    return el('li', {}, el('label', {}, box, ` ${lesson.number}. ${lesson.title}`,
      canTick(lesson) ? null : el('small', {}, ` ${why(lesson)}`)));
  }));
}

const ticked = (list) => Array.from(list.querySelectorAll('input:checked'), (box) => box.value).join(',');

function spaceWords(space) {
  const free = space.freeBytes === undefined
    ? 'The disk does not say how much is free.'
    : `Free on this laptop: ${bytes(space.freeBytes)} now, ${bytes(Math.max(0, space.afterwardsBytes))} afterwards.`;
  return `${bytes(space.neededBytes)} to copy. ${free}`;
}

/** Chooses lessons to copy from the stick to the laptop, with the room that takes. */
export function keepPanel(place, course, refresh) {
  const space = el('p', { 'aria-live': 'polite' }, 'Choose the lessons.');
  const go = button({ text: 'Keep on this laptop', kind: 'main', sign: 'save', disabled: true, onClick: () => {
    const lessons = ticked(list);
    closePanel();
    followHere(place, 'Copying to this laptop:', () => post('api/copies/keep', { edition: course.edition, lessons }), { stopped: STOPPED, refresh });
  } });
  let asked = 0;
  const measure = async () => {
    const lessons = ticked(list);
    const turn = ++asked;
    go.disabled = true;
    if (!lessons) {
      space.textContent = 'Choose the lessons.';
      return;
    }
    await guarded(space, async () => {
      const need = await post('api/copies/need', { edition: course.edition, lessons });
      if (turn === asked) {
        space.textContent = need.fits ? spaceWords(need) : `${spaceWords(need)} That is too little room: choose fewer lessons.`;
        go.disabled = !need.fits;
      }
    });
  };
  const list = lessonBoxes(course.lessons, (lesson) => lesson.here && !lesson.kept,
    (lesson) => (lesson.kept ? 'is on this laptop' : 'is not in this copy'), measure);
  openPanel('Keep lessons on this laptop',
    el('p', {}, 'They then play without the stick. They stay locked as on the stick, and every byte is checked before it counts.'),
    list, space, el('div', { class: 'row' }, go));
}

/** Chooses kept lessons to remove; the stick keeps them. */
export function removePanel(place, course, refresh) {
  const go = button({ text: 'Remove from this laptop', kind: 'main', disabled: true, onClick: () => {
    const lessons = ticked(list);
    closePanel();
    guarded(place, async () => {
      const { message } = await post('api/copies/remove', { edition: course.edition, lessons });
      place.replaceChildren(goodNotice(message));
      refresh();
    });
  } });
  const list = lessonBoxes(course.lessons.filter((lesson) => lesson.kept), () => true, () => '',
    () => { go.disabled = !ticked(list); });
  openPanel('Remove kept lessons',
    el('p', {}, 'Your place in each lesson stays. Make sure you have the stick: the lessons play from there afterwards.'),
    list, el('div', { class: 'row' }, go));
}

/** Asks for another copy and fetches from it what is missing or damaged in this one. */
export function repairPanel(place, course, refresh) {
  const from = el('input', { type: 'text', id: 'repair-from', autocomplete: 'off', spellcheck: 'false' });
  const go = (event) => {
    event.preventDefault();
    const text = from.value.trim();
    if (text) {
      closePanel();
      followHere(place, 'Reading and mending:', () => post('api/copies/repair', { edition: course.edition, from: text }), { stopped: STOPPED, refresh });
    }
  };
  openPanel('Repair this copy',
    el('p', {}, 'What is damaged or missing is fetched from another copy: a second stick, a folder, or a web address from your teacher. Each byte is checked against the teacher’s signature; a wrong copy can change nothing.'),
    el('form', { on: { submit: go } },
      el('label', { for: 'repair-from' }, 'Folder of the other copy, or its web address', from),
      el('div', { class: 'row' }, el('button', { type: 'submit', class: 'main' }, 'Repair'))));
  from.focus();
}
