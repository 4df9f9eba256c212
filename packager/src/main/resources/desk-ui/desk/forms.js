import { el } from '../js/dom.js';

/** A labelled field: `field('Name', {name: 'name', required: true})`. */
export function field(label, attributes, hint) {
  return el('label', { class: 'field' }, el('span', {}, label),
    el('input', { type: 'text', autocomplete: 'off', spellcheck: 'false', ...attributes }),
    hint ? el('small', {}, hint) : null);
}

/** A labelled list to choose from; options are texts or [value, words] pairs. */
export function choice(label, name, options, chosen) {
  return el('label', { class: 'field' }, el('span', {}, label),
    el('select', { name }, options.map((option) => {
      const [value, words] = Array.isArray(option) ? option : [option, option];
      return el('option', { value, selected: value === chosen }, words);
    })));
}

/** What a form holds, as texts by name. */
export const values = (form) => Object.fromEntries(new FormData(form));

/** A form that does not leave the page. */
export function form(attributes, onSubmit, ...children) {
  return el('form', {
    ...attributes,
    on: {
      submit: (event) => {
        event.preventDefault();
        onSubmit(values(event.target), event.target);
      },
    },
  }, ...children);
}
