import { byId, button, el, icon, svg } from '../dom.js';
import { clock } from '../units.js';
import { momentAt, timerSeconds } from './moments.js';
import { kindWords, paperFor, signOf } from './papers.js';
import { placeTags, stripWidth } from './strip-layout.js';
import { startTimer } from '../timers.js';

const LEAST_REM = 4.2;
const SCROLLING_REM = 8;
const SMALL_REM = 5.5;
const BESIDE_REM = 3;

const remPixels = () => parseFloat(getComputedStyle(document.documentElement).fontSize);

/** What a tag says besides its text: its time and what it opens. */
function more(moment, paper) {
  const opens = paper ? `, opens ${kindWords(paper)} ${paper.title}${moment.page ? ` page ${moment.page}` : ''}` : '';
  return `, at ${clock(moment.atMillis / 1000)}${opens}`;
}

function tag(moment, store) {
  const paper = paperFor(moment, store.getState().papers);
  const words = moment.text + (moment.page ? ` · p. ${moment.page}` : '');
  const wait = timerSeconds(moment);
  const run = () => {
    store.dispatch('seek', moment.atMillis / 1000);
    store.dispatch('openMoment', moment);
  };
  const main = el('button', { type: 'button', class: 'tag', title: words + more(moment, paper), on: { click: run } },
    icon(paper ? signOf(paper) : 'moment'),
    el('span', { class: 'tag-words' }, words),
    el('span', { class: 'heard' }, more(moment, paper)));
  const timer = wait
    ? button({ label: `Start a timer: ${moment.text}`, sign: 'clock', kind: 'bare tag-beside tag-timer', onClick: () => startTimer(moment.text.slice(0, 100), wait).catch((error) => { byId('said').textContent = error.happened; }) })
    : null;
  return el('li', {}, main, moment.more.map((also) => tagBeside(also, store)), timer);
}

/** A further paper of the same moment: a sign beside the tag. */
function tagBeside(moment, store) {
  const paper = paperFor(moment, store.getState().papers);
  return paper && button({
    label: `${moment.text}: open ${kindWords(paper)} ${paper.title}`,
    sign: signOf(paper),
    kind: 'bare tag-beside',
    onClick: () => store.dispatch('openMoment', moment),
  });
}

/** Room in rem for what stands beside the words of a tag. */
const besideRem = (moment) => BESIDE_REM * ((timerSeconds(moment) ? 1 : 0) + moment.more.length);

function thread(from, to, depth) {
  return svg('path', { d: `M${from} 0 C${from} ${depth * 0.7} ${to} ${depth * 0.3} ${to} ${depth}` });
}

function arrange(parts, store) {
  const { list, lines, inner } = parts;
  const { moments, duration } = store.getState();
  const rem = remPixels();
  const available = inner.parentElement.clientWidth - 2 * rem;
  const needed = moments.map((moment) => (LEAST_REM + besideRem(moment)) * rem);
  const scrolls = stripWidth(needed, 0) > available;
  const least = scrolls ? moments.map((moment) => (SCROLLING_REM + besideRem(moment)) * rem) : needed;
  const total = stripWidth(least, available);
  inner.style.width = `${total}px`;
  const times = moments.map((moment) => Math.min(1, moment.atMillis / 1000 / duration) * total);
  const placed = placeTags(times, total, least, 15 * rem);
  placed.forEach(({ left, width }, i) => {
    const item = list.children[i];
    item.style.left = `${left}px`;
    item.style.width = `${width}px`;
    item.firstElementChild.classList.toggle('small', width - besideRem(moments[i]) * rem < SMALL_REM * rem);
  });
  lines.replaceChildren(...placed.map(({ left, width }, i) => thread(times[i], left + Math.min(18, width / 2), rem)));
}

function markNow(parts, index, scroll) {
  const { list, lines } = parts;
  Array.from(list.children).forEach((item, i) => {
    const now = i === index;
    item.firstElementChild.classList.toggle('now', now);
    item.firstElementChild.setAttribute('aria-current', now ? 'step' : 'false');
    lines.children[i]?.classList.toggle('now', now);
  });
  const item = list.children[index];
  if (item && scroll) {
    const box = byId('strip-scroll');
    box.scrollLeft = item.offsetLeft - (box.clientWidth - item.offsetWidth) / 2;
  }
}

/** Hangs one tag per moment; returns how to take them down. */
export function hangTags(inner, store) {
  const { moments } = store.getState();
  const list = el('ol', { class: 'moments', 'aria-label': 'Moments' }, moments.map((moment) => tag(moment, store)));
  const lines = svg('svg', { class: 'threads', 'aria-hidden': 'true' });
  const parts = { list, lines, inner };
  inner.append(lines, list);
  inner.classList.toggle('bare', moments.length === 0);
  const indexNow = () => momentAt(store.getState().moments, store.getState().time);
  const place = () => {
    arrange(parts, store);
    markNow(parts, indexNow(), false);
  };
  const observer = new ResizeObserver(place);
  observer.observe(inner.parentElement);
  place();
  const unwatch = store.watch((state) => momentAt(state.moments, state.time), (index) => markNow(parts, index, true));
  return () => {
    observer.disconnect();
    unwatch();
  };
}
