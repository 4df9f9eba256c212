import { button, byId, el } from '../dom.js';
import { openPanel } from '../panel.js';
import { choice, settingsForm } from '../settings-form.js';
import { helpSlipButton } from '../help-slip.js';
import { quitButton } from '../quit.js';
import { bytes } from '../units.js';
import { keyTable } from './keys.js';
import { timerForm } from '../timer-form.js';

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

function anySpeed(store) {
  const input = el('input', { type: 'number', id: 'any-speed', min: '0.1', max: '4', step: '0.05', value: String(store.getState().speed) });
  input.addEventListener('change', () => {
    const speed = Math.min(4, Math.max(0.1, Number(input.value) || 1));
    input.value = String(speed);
    store.dispatch('speed', speed);
  });
  return el('p', { class: 'row' }, el('label', { for: 'any-speed' }, 'Any speed, 0.1 to 4; the pitch stays'), input);
}

function openMenu(store) {
  const { lesson, settings } = store.getState();
  const { summary, block } = lesson.lesson;
  openPanel('Menu',
    summary ? el('p', {}, summary) : null,
    block ? el('p', {}, `Block of this lesson: ${block}`) : null,
    el('div', { class: 'row' },
      button({ text: 'One frame back', onClick: () => store.dispatch('frame', -1) }),
      button({ text: 'One frame on', onClick: () => store.dispatch('frame', 1) })),
    anySpeed(store),
    el('h3', {}, 'Timers'), timerForm(),
    el('h3', {}, 'At the bench'),
    el('p', {}, el('a', { class: 'button', href: 'pedal.html' }, 'My pedal or clicker')),
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
