import { get, post } from '../api.js';
import { button, el, icon } from '../dom.js';
import { guarded } from '../notice.js';
import { closePanel, openPanel } from '../panel.js';
import { followHere } from '../follow.js';
import { bytes } from '../units.js';

const where = (merge) => (merge.onLaptop ? 'the lessons that you keep on this laptop' : `the copy in ${merge.into}`);

function room(merge) {
  const free = merge.freeBytes === undefined
    ? 'The disk does not say how much is free.'
    : `Free there: ${bytes(merge.freeBytes)} now, ${bytes(Math.max(0, merge.afterwardsBytes))} afterwards.`;
  return el('dl', { class: 'room' },
    el('div', {}, el('dt', {}, 'are copied'), el('dd', {}, bytes(merge.addedBytes))),
    el('div', {}, el('dt', {}, 'stay where they are'), el('dd', {}, bytes(merge.keptBytes))),
    el('div', {}, el('dt', {}, 'go at the end'), el('dd', {}, bytes(merge.goingBytes))),
    el('p', {}, free, merge.fits ? null : el('strong', {}, ' That is too little room.')));
}

/** Shows what a merge takes and begins it; what comes of it stands in `place`. */
function mergePanel(place, merge, refresh) {
  const begin = () => {
    closePanel();
    followHere(place, 'Merging and checking:', () => post('api/merge', { from: merge.from, into: merge.into }), {
      stopped: 'Stopped. The older edition is as it was; what was copied is used when you merge again.',
      refresh,
    });
  };
  openPanel(`Edition ${merge.newer} of ${merge.title}`,
    el('p', {}, `Makes ${where(merge)} into edition ${merge.newer}. What is new comes from ${merge.from}.`),
    room(merge),
    el('p', {}, 'Edition ', String(merge.older), ' plays until every byte of the new one is read and right; only then does it go. Your places in the lessons, notes and pieces stay. If the power fails or the stick is pulled, nothing is lost: merge again.'),
    el('div', { class: 'row' }, button({ text: 'Merge', kind: 'main', disabled: !merge.fits, onClick: begin })));
}

/** Lines for every older copy that can become a newer edition now; returns what looks for them. */
export function mergeList(place, refresh) {
  const lines = el('div', { class: 'merges' });
  const answer = el('div', { 'aria-live': 'polite' });
  place.append(lines, answer);

  const line = (merge) => el('div', { class: 'notice merge' }, icon('save'),
    el('p', {}, el('strong', {}, `${merge.title}: edition ${merge.newer} is here.`),
      ` ${merge.onLaptop ? 'You keep lessons of' : `${merge.into} holds`} edition ${merge.older}.`),
    button({
      text: 'Merge …', kind: 'main', 'aria-label': `Merge edition ${merge.newer} of ${merge.title} into ${where(merge)}`,
      onClick: () => mergePanel(answer, merge, again),
    }));

  async function look() {
    await guarded(answer, async () => {
      const { merges } = await get('api/merges');
      lines.replaceChildren(...merges.map(line));
    });
  }
  function again() {
    refresh();
    look();
  }
  return look;
}
