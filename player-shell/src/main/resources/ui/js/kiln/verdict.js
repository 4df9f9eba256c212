import { byId, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { length } from '../units.js';
import { troubleAt } from '../fields.js';
import { fieldWords, longTime, stress } from './words.js';

const unfused = (answer) => answer.notes.some((note) => note.topic === 'NOT_FUSED');

/** What is beside my plan, as words in a sentence. */
function besideWords({ second, schedule, lesson }) {
  if (second) {
    return 'The second plan';
  }
  const name = schedule ? schedule.name.replace(/\.firing\.csv$/i, '') : '';
  return lesson ? `The lesson’s schedule (${name})` : name;
}

function times(one, other) {
  if (!(one > 0.02) || !(other > 0.02)) {
    return '';
  }
  const ratio = other / one;
  return ratio > 1.3 ? `, ${Number(ratio.toPrecision(2))} times as much` : ratio < 0.77 ? ', less than yours' : ', about the same';
}

/** The sentence that no one forgets: what stays in my block, and what the lesson's schedule would leave in it. */
function sentences(state) {
  const { answer, settings, setup } = state;
  const block = setup.task === 'enamel' ? `your sheet of ${length(answer.thickness_mm, settings.lengthUnit)}` : `your block of ${length(answer.thickness_mm, settings.lengthUnit)}`;
  const mine = unfused(answer)
    ? el('p', {}, el('strong', {}, 'Your sheets would not grow together'), ': the core stays too cool. See below.')
    : el('p', {}, 'Your firing takes ', el('strong', { id: 'total' }, longTime(answer.total_h)), ' and leaves about ',
      el('strong', { id: 'mine-mpa' }, stress(answer.stress.residual_core_mpa)), ` of tension in ${block}; on the way up to ${stress(answer.stress.peak_temporary_mpa)} comes and goes.`);
  return [mine, answer.other ? beside(state) : null];
}

function beside(state) {
  const { other, stress: own } = state.answer;
  const who = besideWords(state);
  if (unfused(other)) {
    return el('p', {}, `${who} would not fuse it: its core stays too cool.`);
  }
  return el('p', {}, `${who} would leave `, el('strong', { id: 'other-mpa' }, stress(other.stress.residual_core_mpa)),
    ` in it${times(own.residual_core_mpa, other.stress.residual_core_mpa)}, in ${longTime(other.total_h)}, with up to ${stress(other.stress.peak_temporary_mpa)} on the way`,
    el('span', { class: 'quiet' }, ' (± 30 %).'));
}

function showProblem(problem, settings) {
  const place = byId('problem');
  document.querySelectorAll('[data-field][aria-invalid]').forEach((input) => {
    const said = document.getElementById(`${input.id}-trouble`);
    if (said && said.dataset.bench) {
      said.textContent = '';
      delete said.dataset.bench;
      input.removeAttribute('aria-invalid');
    }
  });
  if (!problem) {
    place.replaceChildren();
    return;
  }
  const message = fieldWords(problem.said, settings, 'This');
  if (troubleAt(problem.field, message)) {
    document.querySelectorAll('.field-trouble').forEach((said) => { if (said.textContent === message) { said.dataset.bench = 'yes'; } });
  }
  place.replaceChildren(el('div', { class: 'notice bad' },
    el('p', {}, el('strong', {}, message)),
    el('p', {}, 'Nothing that you typed is lost. What is shown is the last firing that could be computed.')));
}

/** A field that cannot be used dims what stands beside it: it is not the answer to what is typed. */
function watchFields() {
  byId('block-fields').addEventListener('input', () => {
    const wrong = byId('block-fields').querySelector('[aria-invalid="true"]');
    byId('result').classList.toggle('stale', Boolean(wrong));
  });
}

export function connectVerdict(store) {
  watchFields();
  const draw = () => {
    const state = store.getState();
    if (state.answer) {
      byId('verdict').replaceChildren(...sentences(state).filter(Boolean));
      byId('result').classList.toggle('stale', Boolean(state.problem || document.querySelector('#block-fields [aria-invalid="true"]')));
    }
  };
  store.watch((state) => state.answer, draw);
  store.watch((state) => state.settings, draw);
  store.watch((state) => state.problem, (problem) => {
    showProblem(problem, store.getState().settings);
    draw();
  });
  store.watch((state) => state.trouble, (trouble) => byId('trouble').replaceChildren(...(trouble ? [errorNotice(trouble)] : [])));
}
