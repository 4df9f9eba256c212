import { el } from '../dom.js';
import { selectField, textField } from '../fields.js';

/** Whose picture it is, on what ground it is used, and for what. Small words that go wherever the plan goes. */

const GROUNDS = [['', 'not said yet'], ['own', 'I took it myself'], ['written', 'written permission'], ['licence', 'a licence that allows changes'], ['public_domain', 'public domain']];
const USES = [['', 'not said yet'], ['class', 'class exercise only'], ['show', 'may be shown'], ['sell', 'may be sold'], ['course', 'may be printed in a course']];
const word = (list, key) => (list.find(([one]) => one === key) || ['', ''])[1];

/** One line for a plan or a template; empty if nothing was said. */
export function permissionLine(permission) {
  const { whose, ground, use, credit } = permission || {};
  return [whose && `Picture: ${whose}`, ground && word(GROUNDS, ground), use && word(USES, use), credit].filter(Boolean).join(' · ');
}

export function showPermission(place, plan, onChange) {
  const said = plan.permission || {};
  const line = el('p', { class: 'small-print', id: 'permission-line' });
  const tell = (patch) => {
    Object.assign(said, patch);
    line.textContent = permissionLine(said) || 'Not said yet. A photograph belongs to whoever took it; ask before you paint closely from it.';
    return { ...said };
  };
  const change = (name) => (value) => onChange(tell({ [name]: value }));
  place.replaceChildren(
    textField({ id: 'whose', label: 'Whose picture', value: said.whose, onChange: change('whose') }),
    selectField({ id: 'ground', label: 'On what ground', options: GROUNDS, value: said.ground || '', onChange: change('ground') }),
    selectField({ id: 'use', label: 'For what', options: USES, value: said.use || '', onChange: change('use') }),
    textField({ id: 'credit', label: 'Credit line asked for', value: said.credit, onChange: change('credit') }),
    textField({ id: 'permission-note', label: 'Letter, link, licence; people who can be recognised', value: said.note, onChange: change('note') }),
    line);
  tell({});
}
