import { post } from '../api.js';
import { byId, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { closePanel, openPanel, panelIsOpen } from '../panel.js';
import { several } from '../units.js';
import { resultOption, urlOf } from './result.js';

const PAUSE_MILLIS = 120;
const LEAST_LETTERS = 2;
const KINDS = [['', 'everything'], ['film', 'films'], ['paper', 'papers'], ['list', 'lists and schedules'], ['title', 'names of lessons'], ['note', 'corrections and notes']];

const go = (find) => window.location.assign(urlOf(find));

/** What was looked for stays for the next time while the page lives. */
const kept = { text: '', kind: '', edition: '' };

const option = ([value, words], chosen) => el('option', { value, selected: value === chosen }, words);

function select(label, choices, name, again) {
  const node = el('select', { on: { change: () => { kept[name] = node.value; again(); } } }, choices.map((one) => option(one, kept[name])));
  return el('label', {}, el('span', {}, label), node);
}

/** What was not searched, so that nobody takes "nothing found" for "it is not there". */
function scopeNotes(answer) {
  const names = answer.searched.filter((one) => !one.whole).map((one) => one.title);
  const note = (words) => el('p', { class: 'quiet' }, words);
  return [
    names.length ? note(`Of ${names.join(', ')} only names are searched: this copy has no search part that opens here. A newer edition may have one.`) : null,
    answer.away.length ? note(`Not searched, as the stick is not here: ${answer.away.join(', ')}.`) : null,
  ].filter(Boolean);
}

/** The panel: a field, two choices, a list that the arrows walk through. */
class FindPanel {
  constructor(choose) {
    this.choose = (find) => { closePanel(); choose(find); };
    this.asked = 0;
    this.at = -1;
    this.finds = [];
    this.field = el('input', {
      type: 'text', id: 'find-field', role: 'combobox', autocomplete: 'off', spellcheck: 'false', 'aria-expanded': 'false', 'aria-controls': 'find-list', 'aria-autocomplete': 'list',
      'aria-label': 'What to find', maxlength: '200', placeholder: 'A word from the film, a page, a list',
      on: { input: () => this.later(), keydown: (event) => this.key(event) },
    });
    this.field.value = kept.text;
    this.choices = el('div', { class: 'find-choices' });
    this.said = el('p', { class: 'find-said', id: 'find-said', role: 'status' });
    this.list = el('ul', { id: 'find-list', class: 'find-list', role: 'listbox', 'aria-label': 'Found' });
    this.notes = el('div', {});
    this.panel = openPanel('Find', this.field, this.choices, this.said, this.list, this.notes);
    this.panel.classList.add('find-panel');
    this.field.focus();
    this.field.select();
    this.ask();
  }

  later() {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.ask(), PAUSE_MILLIS);
  }

  async ask() {
    window.clearTimeout(this.timer);
    kept.text = this.field.value;
    const text = kept.text.trim().length < LEAST_LETTERS ? '' : kept.text;
    const mine = ++this.asked;
    try {
      const answer = await post('api/find', { text, kind: kept.kind, edition: kept.edition });
      if (mine === this.asked) {
        this.show(answer, text);
      }
    } catch (error) {
      this.said.replaceChildren(errorNotice(error));
    }
  }

  show(answer, text) {
    if (!this.choices.childNodes.length) {
      const courses = answer.searched.map((one) => [one.edition, one.title]);
      this.choices.append(select('In', KINDS, 'kind', () => this.ask()));
      if (courses.length > 1) {
        this.choices.append(select('Of', [['', 'all courses'], ...courses], 'edition', () => this.ask()));
      }
    }
    this.finds = answer.finds;
    this.panel.dataset.answered = text;
    this.list.replaceChildren(...this.finds.map((find, i) => resultOption(find, `found-${i}`, this.choose)));
    this.field.setAttribute('aria-expanded', String(this.finds.length > 0));
    this.move(this.finds.length ? 0 : -1);
    this.notes.replaceChildren(...scopeNotes(answer));
    this.said.textContent = text ? this.told() : 'Accents, endings and one wrong letter are forgiven.';
  }

  told() {
    return this.finds.length ? `${several(this.finds.length, 'place')} found` : 'Nothing found. Try fewer words, or the beginning of one.';
  }

  move(to) {
    this.at = to;
    Array.from(this.list.children).forEach((node, i) => node.setAttribute('aria-selected', String(i === to)));
    const active = this.list.children[to];
    this.field.setAttribute('aria-activedescendant', active ? active.id : '');
    active?.scrollIntoView({ block: 'nearest' });
  }

  key(event) {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const count = this.finds.length;
    if (step && count) {
      event.preventDefault();
      this.move((this.at + step + count) % count);
    } else if (event.key === 'Enter' && this.finds[this.at] && kept.text === this.field.value) {
      event.preventDefault();
      this.choose(this.finds[this.at]);
    }
  }
}

const isTyping = (node) => node.matches('input, textarea, select, [contenteditable="true"]');

/**
 * Wakes the button and the keys: "/" and Ctrl or Command with K.
 * @param {function} choose what to do with a chosen result; goes to its page if not given
 */
export function connectFind(choose = go) {
  const open = () => new FindPanel(choose);
  byId('find-button').addEventListener('click', open);
  document.addEventListener('keydown', (event) => {
    const slash = event.key === '/' && !event.ctrlKey && !event.metaKey && !event.altKey && !isTyping(event.target);
    const letter = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'k';
    if (!event.defaultPrevented && !panelIsOpen() && (slash || letter)) {
      event.preventDefault();
      open();
    }
  });
}
