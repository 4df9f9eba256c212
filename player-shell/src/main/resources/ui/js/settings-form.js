import { el } from './dom.js';

const CHOICES = [
  { key: 'temperatureUnit', title: 'Temperatures', options: [['C', '°C'], ['F', '°F']] },
  { key: 'lengthUnit', title: 'Lengths', options: [['mm', 'mm'], ['in', 'in']] },
  { key: 'theme', title: 'Light', options: [['system', 'as the laptop'], ['light', 'light'], ['dark', 'dark']] },
];

/** One question with a few answers, as radio buttons. */
export function choice({ key, title, options }, current, onChange) {
  return el('fieldset', { class: 'choices' },
    el('legend', {}, title),
    options.map(([value, words]) => el('label', {},
      el('input', {
        type: 'radio', name: key, value, checked: String(current) === String(value),
        on: { change: () => onChange({ [key]: value }) },
      }), words)));
}

/** The settings that hold on every page. `onChange` gets a patch. */
export function settingsForm(settings, onChange) {
  return el('div', {}, CHOICES.map((question) => choice(question, settings[question.key], onChange)));
}
