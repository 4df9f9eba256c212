import { el } from './dom.js';

/** Fields for numbers: read in the person's unit, kept in mm, °C and the like. A wrong entry stays. */

const SCALES = {
  mm: { mm: [1, 0, 'mm', 2], in: [1 / 25.4, 0, 'in', 3] },
  C: { C: [1, 0, '°C', 0], F: [1.8, 32, '°F', 0] },
  rate: { C: [1, 0, '°C/h', 1], F: [1.8, 0, '°F/h', 1] },
};

/** How a kind of figure is shown: [factor, zero, words, digits]. */
function scaleOf(kind, settings) {
  const own = SCALES[kind];
  if (!own) {
    return [1, 0, kind || '', 3];
  }
  return own[kind === 'mm' ? settings.lengthUnit : settings.temperatureUnit] || Object.values(own)[0];
}

const plain = (value, digits) => String(Number(value.toFixed(digits)));

export function shownValue(value, kind, settings) {
  const [factor, zero, , digits] = scaleOf(kind, settings);
  return value === null || value === undefined ? '' : plain(value * factor + zero, digits);
}

/** Reads "3,2" and "3.2" alike; returns NaN for what cannot be a number, or could be two. */
export function readNumber(text) {
  const tidy = text.trim().replace(/\s/g, '').replace(/^\u2212/, '-');
  return /^[+-]?\d+([.,]\d+)?$/.test(tidy) && !/^[+-]?[1-9]\d{0,2},\d{3}$/.test(tidy) ? Number(tidy.replace(',', '.')) : NaN;
}

function refusal(text, spec, settings) {
  const [factor, zero, words, digits] = scaleOf(spec.kind, settings);
  const range = `${plain(spec.min * factor + zero, digits)} to ${plain(spec.max * factor + zero, digits)}${words ? ` ${words}` : ''}`;
  if (!text.trim()) {
    return spec.optional ? '' : `Needed: ${range}.`;
  }
  const typed = readNumber(text);
  if (/^\s*[+-]?[1-9]\d{0,2},\d{3}\s*$/.test(text)) {
    return `Is ${text.trim()} a decimal comma or a thousand? Write it with a point, or with no sign at all.`;
  }
  if (Number.isNaN(typed)) {
    return `Only a number here, ${range}.`;
  }
  const value = (typed - zero) / factor;
  if (spec.whole && typed !== Math.round(typed)) {
    return `A whole number, ${range}.`;
  }
  return value < spec.min - 1e-9 || value > spec.max + 1e-9 ? `${spec.says || 'It must be'} ${range}.` : '';
}

/**
 * One number. `spec`: {id, label, kind, min, max, whole, optional, says, value, onChange, hint}.
 * What cannot be used is said below the field, stays in it, and changes nothing else.
 */
export function numberField(spec, settings) {
  const words = scaleOf(spec.kind, settings)[2];
  const said = el('p', { class: 'field-trouble', id: `${spec.id}-trouble`, role: 'alert' });
  const input = el('input', {
    type: 'text', inputmode: 'decimal', autocomplete: 'off', id: spec.id, 'data-field': spec.field || spec.id,
    value: shownValue(spec.value, spec.kind, settings), 'aria-describedby': `${spec.id}-trouble`,
  });
  const read = () => {
    const trouble = refusal(input.value, spec, settings);
    said.textContent = trouble;
    if (trouble) {
      input.setAttribute('aria-invalid', 'true');
      return;
    }
    input.removeAttribute('aria-invalid');
    const [factor, zero] = scaleOf(spec.kind, settings);
    spec.onChange(input.value.trim() ? (readNumber(input.value) - zero) / factor : null);
  };
  input.addEventListener('input', read);
  return el('div', { class: 'field' },
    el('label', { for: spec.id }, spec.label),
    el('span', { class: 'field-line' }, input, words ? el('span', { class: 'unit' }, words) : null),
    spec.hint ? el('p', { class: 'hint' }, spec.hint) : null,
    said);
}

/** A choice from a list. */
export function selectField({ id, label, options, value, onChange }) {
  const select = el('select', { id }, options.map(([key, words]) => el('option', { value: key, selected: key === value }, words)));
  select.addEventListener('change', () => onChange(select.value));
  return el('div', { class: 'field' }, el('label', { for: id }, label), select);
}

/** A line of text. */
export function textField({ id, label, value, onChange, hint }) {
  const input = el('input', { type: 'text', id, value: value || '', maxlength: 100, 'data-field': id });
  input.addEventListener('input', () => onChange(input.value));
  return el('div', { class: 'field' }, el('label', { for: id }, label), input,
    hint ? el('p', { class: 'hint' }, hint) : null,
    el('p', { class: 'field-trouble', id: `${id}-trouble`, role: 'alert' }));
}

/** Puts what the bench says of a field at that field; false if the field is not on the page. */
export function troubleAt(field, message) {
  const last = field.split('.').pop().replace(/\[\d+\]$/, '');
  const input = Array.from(document.querySelectorAll('[data-field]')).find((node) => [field, last].includes(node.dataset.field));
  const said = input && document.getElementById(`${input.id}-trouble`);
  if (!said) {
    return false;
  }
  said.textContent = message;
  input.setAttribute('aria-invalid', 'true');
  return true;
}
