import { byId, el } from '../dom.js';
import { clock, spoken } from '../units.js';
import { bands, stageTitle } from './stages.js';
import { momentAt } from './moments.js';
import { damagedRanges } from './damage.js';
import { loops } from './loop.js';
import { hangTags } from './strip-tags.js';

const percent = (seconds, duration) => `${((seconds / duration) * 100).toFixed(3)}%`;

function span(className, range, duration) {
  const node = el('div', { class: className });
  node.style.left = percent(range.from, duration);
  node.style.width = percent(range.to - range.from, duration);
  return node;
}

function stageNames(found, duration) {
  return el('ol', { class: 'stages', 'aria-label': 'Stages of the work' },
    found.filter((band) => stageTitle(band.stage)).map((band) => {
      const name = el('li', { 'data-from': band.from, 'data-to': band.to }, stageTitle(band.stage));
      name.style.left = percent(band.from, duration);
      name.style.maxWidth = percent(band.to - band.from, duration);
      return name;
    }));
}

function stageBands(found, duration) {
  return found.map((band) => {
    const node = span('band', band, duration);
    node.dataset.stage = band.stage;
    return node;
  });
}

function damageMarks(lesson, duration) {
  return damagedRanges(lesson, duration).map((range) => {
    const node = span('hurt', range, duration);
    node.title = `damaged here, ${clock(range.from)} to ${clock(range.to)}`;
    return node;
  });
}

const STEPS = { ArrowLeft: -10, ArrowRight: 10, ArrowDown: -1, ArrowUp: 1, PageDown: -60, PageUp: 60 };

/** The rail is a slider: pointer and keys ask for a second. */
function listen(rail, store) {
  const at = (event) => {
    const box = rail.getBoundingClientRect();
    return ((event.clientX - box.left) / box.width) * store.getState().duration;
  };
  rail.addEventListener('pointerdown', (event) => {
    rail.setPointerCapture(event.pointerId);
    store.dispatch('seek', at(event));
  });
  rail.addEventListener('pointermove', (event) => event.buttons && store.dispatch('seek', at(event)));
  rail.addEventListener('keydown', (event) => {
    const { duration } = store.getState();
    const edge = { Home: 0, End: duration - 0.1 }[event.key];
    if (edge !== undefined) {
      store.dispatch('seek', edge);
    } else if (STEPS[event.key]) {
      store.dispatch('skip', STEPS[event.key]);
    } else {
      return;
    }
    event.preventDefault();
  });
}

function followTime(rail, parts, store) {
  const { head, seen, names } = parts;
  return store.watch((state) => state.time, (time, state) => {
    const { duration, moments } = state;
    head.style.left = percent(time, duration);
    seen.style.width = percent(time, duration);
    rail.setAttribute('aria-valuenow', String(Math.round(time)));
    const moment = moments[momentAt(moments, time)];
    rail.setAttribute('aria-valuetext', spoken(time) + (moment ? `, ${moment.text}` : ''));
    Array.from(names.children).forEach((name) => {
      name.classList.toggle('now', time >= Number(name.dataset.from) && time < Number(name.dataset.to));
    });
  });
}

function build(store) {
  const { lesson, moments, duration } = store.getState();
  const found = bands(moments, duration);
  const names = stageNames(found, duration);
  const head = el('div', { class: 'playhead' });
  const seen = el('div', { class: 'seen' });
  const bed = el('div', { class: 'rail-bed' }, stageBands(found, duration), damageMarks(lesson, duration), seen);
  const rail = el('div', {
    class: 'rail', id: 'rail', role: 'slider', tabindex: '0', 'aria-label': 'Time in the lesson', 'aria-valuemin': '0', 'aria-valuemax': Math.round(duration),
  }, bed, head);
  listen(rail, store);
  byId('strip-inner').replaceChildren(names, rail);
  const unfollow = followTime(rail, { head, seen, names }, store);
  const unloop = store.watch((state) => state.loop, (loop) => {
    bed.querySelector('.loop')?.remove();
    if (loop.from !== null) {
      bed.append(span('loop', loops(loop) ? loop : { from: loop.from, to: loop.from + duration / 300 }, duration));
    }
  });
  const unhang = hangTags(byId('strip-inner'), store);
  return () => [unfollow, unloop, unhang].forEach((end) => end());
}

/** The work strip: time to the right, stages as bands, papers and timers hung at their moment, damage hatched. */
export function connectStrip(store) {
  let end = () => undefined;
  const rebuild = (_, state) => {
    end();
    end = () => undefined;
    byId('strip').hidden = !state.duration;
    if (state.duration) {
      end = build(store);
      noteDamage(state);
    }
  };
  store.watch((state) => state.duration, rebuild);
  store.watch((state) => state.lesson.damaged, rebuild);
}

function noteDamage(state) {
  byId('damage-note')?.remove();
  const ranges = damagedRanges(state.lesson, state.duration);
  if (ranges.length) {
    byId('strip').append(el('p', { class: 'strip-note', id: 'damage-note' },
      `Damaged here: ${ranges.map((range) => clock(range.from)).join(', ')}. Everything else plays.`));
  }
}
