import { button, byId, el } from '../dom.js';
import { openPanel } from '../panel.js';
import { settingsForm } from '../settings-form.js';
import { helpSlipButton } from '../help-slip.js';
import { quitButton } from '../quit.js';
import { openKilns } from './kilns.js';
import { openGlasses } from './glasses.js';

function switcher(store, key, options) {
  const group = el('span', { class: 'switch', role: 'group', 'aria-label': key === 'temperatureUnit' ? 'Temperatures' : 'Lengths' });
  store.watch((state) => state.settings[key], (current) => {
    const held = group.contains(document.activeElement);
    group.replaceChildren(...options.map(([value, words]) => button({
      text: words, 'aria-pressed': String(current === value), onClick: () => store.dispatch('settings', { [key]: value }),
    })));
    if (held) {
      group.querySelector('[aria-pressed="true"]').focus();
    }
  });
  return group;
}

function menu(store) {
  openPanel('Menu',
    el('div', { class: 'row' },
      button({ text: 'My kilns', onClick: () => openKilns(store) }),
      button({ text: 'My glasses', onClick: () => openGlasses(store) })),
    el('h3', {}, 'How it is shown'),
    settingsForm(store.getState().settings, (patch) => store.dispatch('settings', patch)),
    el('h3', {}, 'When something does not work'), helpSlipButton(null),
    el('div', { class: 'row' }, quitButton()));
}

/** Back to the lesson, the units, the log, the print and the menu. */
export function connectBar(store) {
  const { lesson, piece, place } = store.getState();
  if (place.l) {
    byId('back').href = `lesson.html?e=${place.e}&l=${place.l}`;
    byId('back-words').textContent = 'Lesson';
  }
  byId('for-what').textContent = [piece ? piece.name : '', lesson ? `${lesson.number}. ${lesson.title}` : ''].filter(Boolean).join(' · ');
  byId('unit-switches').replaceChildren(switcher(store, 'temperatureUnit', [['C', '°C'], ['F', '°F']]), switcher(store, 'lengthUnit', [['mm', 'mm'], ['in', 'in']]));
  byId('menu-button').addEventListener('click', () => menu(store));
  byId('log-button').addEventListener('click', () => { byId('log').focus(); byId('log').scrollIntoView(); });
}
