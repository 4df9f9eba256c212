import { post } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { closePanel } from '../panel.js';
import { temperature } from '../units.js';
import { numberField } from '../fields.js';
import { inWords } from './words.js';

/** The power failed: what was reached when, and what to do now. */

const HOUR_MS = 3600000;

/** Advice with which the kiln is left to cool; the other two go on, and must not be told otherwise. */
const COLD_FIRST = ['leave', 'anneal-again'];

function planAgain(store, firing) {
  const mm = firing.plan.answer.thickness_mm;
  closePanel();
  store.dispatch('change', { task: 'anneal', by: 'measured', measured_mm: mm, caution: 'extra-careful', top_c: null });
}

function adviceWords(store, firing, advice) {
  const { settings } = store.getState();
  const unit = settings.temperatureUnit;
  return el('div', { class: 'notice care' },
    el('p', {}, `The power failed on line ${advice.line}${advice.stage ? `, ${advice.stage}` : ''}: the kiln was at about ${temperature(advice.at_cut_c, unit)} and is now at about ${temperature(advice.now_c, unit)}.`),
    advice.words.map((words, i) => el('p', {}, i ? words : el('strong', {}, words))),
    COLD_FIRST.includes(advice.advice) ? el('p', {}, inWords(advice.caution, settings)) : null,
    advice.advice === 'anneal-again' ? button({ text: 'Plan the annealing', kind: 'main', onClick: () => planAgain(store, firing) }) : null);
}

export function powerCutForm(store, firing) {
  const { settings } = store.getState();
  const started = new Date(firing.started_at).getTime();
  const cut = { hours: Math.max(0, (Date.now() - started) / HOUR_MS), minutes: null, now: null };
  const said = el('div', { role: 'status' });
  const total = firing.plan.answer.total_h;
  const ask = async () => {
    try {
      const { clock, tariff, ...request } = firing.plan.request;
      const advice = await post('api/firing/power-cut', {
        ...request, cut: { after_h: cut.hours, ...(cut.now === null ? {} : { now_c: cut.now }), ...(cut.minutes === null ? {} : { minutes: cut.minutes }) },
      });
      said.replaceChildren(advice.problem ? el('p', { class: 'field-trouble' }, `${advice.problem.field}: ${inWords(advice.problem.said, settings)}`) : adviceWords(store, firing, advice));
    } catch (error) {
      said.replaceChildren(errorNotice(error));
    }
  };
  return el('details', { class: 'power-cut' }, el('summary', {}, 'The power failed'),
    el('p', {}, inWords(store.getState().known.cautions.POWER_CUT, settings)),
    numberField({ id: 'cut-hours', label: 'It failed so many hours after the start', min: 0, max: Math.ceil(total), value: Math.round(Math.min(total, cut.hours) * 10) / 10, onChange: (value) => { cut.hours = Math.min(total, value); } }, settings),
    numberField({ id: 'cut-now', label: 'The display shows now', kind: 'C', min: -20, max: 1300, optional: true, value: null, onChange: (value) => { cut.now = value; } }, settings),
    numberField({ id: 'cut-minutes', label: 'or: minutes without power', min: 0, max: 60000, optional: true, value: null, onChange: (value) => { cut.minutes = value; } }, settings),
    button({ id: 'cut-ask', text: 'What now?', kind: 'main', onClick: ask }), said);
}
