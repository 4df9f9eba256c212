import { button, byId, el } from '../dom.js';
import { openPanel } from '../panel.js';
import { choice, settingsForm } from '../settings-form.js';
import { helpSlipButton } from '../help-slip.js';
import { quitButton } from '../quit.js';
import { bytes, clock } from '../units.js';
import { loops } from './loop.js';
import { keyTable } from './keys.js';
import { startTimer } from './timers.js';

const CAPTION_SIZES = { key: 'captionSize', title: 'Caption size', options: [['s', 'small'], ['m', 'plain'], ['l', 'large'], ['xl', 'very large']] };

function renditions(store) {
  const { video } = store.getState().lesson;
  if (!video || video.length < 2) {
    return null;
  }
  const words = { full: 'full', light: 'light, for an old laptop' };
  const options = video.map((one) => [one.rendition, `${words[String(one.rendition).toLowerCase()] || one.rendition} (${bytes(one.bytes)})`]);
  return choice({ key: 'rendition', title: 'Picture', options }, byId('video').dataset.rendition,
    (patch) => store.dispatch('rendition', patch.rendition));
}

function captionChoices(store) {
  const { lesson, settings } = store.getState();
  if (!lesson.captions || !lesson.captions.length) {
    return null;
  }
  const change = (patch) => store.dispatch('settings', patch);
  const languages = lesson.captions.map((one) => [one.language, one.label || one.language]);
  return el('div', {},
    choice(CAPTION_SIZES, settings.captionSize, change),
    languages.length > 1
      ? choice({ key: 'captionLanguage', title: 'Caption language', options: languages }, settings.captionLanguage || Array.from(byId('video').textTracks).find((track) => track.mode === 'hidden')?.language, change)
      : null);
}

function loopEdges(store) {
  const { loop } = store.getState();
  if (!loops(loop)) {
    return null;
  }
  const words = el('p', { role: 'status' });
  const say = () => {
    const { from, to } = store.getState().loop;
    words.textContent = `From ${clock(from)} (${from.toFixed(1)} s) to ${clock(to)} (${to.toFixed(1)} s)`;
  };
  const move = (edge, by) => () => {
    store.dispatch('loopEdge', { [edge]: store.getState().loop[edge] + by });
    say();
  };
  say();
  return el('div', {}, el('h3', {}, 'Loop'), words, el('div', { class: 'row' },
    button({ text: 'Start earlier', onClick: move('from', -0.5) }),
    button({ text: 'Start later', onClick: move('from', 0.5) }),
    button({ text: 'End earlier', onClick: move('to', -0.5) }),
    button({ text: 'End later', onClick: move('to', 0.5) })));
}

function timerForm() {
  const minutes = el('input', { type: 'number', id: 'own-timer', min: '1', max: '5999', value: '10' });
  return el('form', { class: 'row', on: { submit: (event) => {
    event.preventDefault();
    startTimer('Timer', Math.max(1, Number(minutes.value)) * 60);
  } } },
  el('label', { for: 'own-timer' }, 'Timer, minutes'), minutes, el('button', { type: 'submit' }, 'Start'));
}

function openMenu(store) {
  const { lesson, settings } = store.getState();
  const { summary, block } = lesson.lesson;
  openPanel('Menu',
    summary ? el('p', {}, summary) : null,
    block ? el('p', {}, `Block of this lesson: ${block}`) : null,
    loopEdges(store),
    el('div', { class: 'row' },
      button({ text: 'One frame back', onClick: () => store.dispatch('frame', -1) }),
      button({ text: 'One frame on', onClick: () => store.dispatch('frame', 1) })),
    el('h3', {}, 'At the bench'), timerForm(),
    el('p', {}, el('a', { class: 'button', href: `kiln.html?e=${lesson.edition}&l=${lesson.lesson.id}` }, 'Kiln sheet for my block')),
    el('h3', {}, 'How it is shown'),
    renditions(store), captionChoices(store),
    settingsForm(settings, (patch) => store.dispatch('settings', patch)),
    el('h3', {}, 'Keys'), keyTable(),
    el('h3', {}, 'When something does not work'), helpSlipButton(null),
    el('div', { class: 'row' }, quitButton()));
}

/** Everything that is not needed with glass in the hand. */
export function connectMenu(store) {
  byId('menu-button').setAttribute('aria-haspopup', 'dialog');
  byId('menu-button').setAttribute('aria-label', 'Menu');
  byId('menu-button').addEventListener('click', () => openMenu(store));
}
