import { get, post } from '../api.js';
import { byId, el, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { DEFAULTS, loadSettings } from '../settings.js';
import { notes } from '../sheets/lists.js';
import { side } from '../sheets/side.js';
import { length } from '../units.js';
import { createEye } from './eye.js';
import { showFileCard } from './file-card.js';
import { showFormat } from './format.js';
import { createHistory } from './history.js';
import { createKeeper } from './keeper.js';
import { added, allLoose, changed, removed, renamed, request, shifted, told, withSheets } from './model.js';
import { showPermission } from './permission.js';
import { showShelf } from './shelf.js';
import { showFronts, showSubjects } from './subjects.js';
import { createSurface } from './surface.js';
import { createValues } from './values.js';

const REST_MILLIS = 60;
const LATER_CARDS = ['subjects-card', 'format-card', 'permission-card', 'file-card'];
const PLAN_CARDS = ['side-card', 'eye-card', 'values-card'];

const state = { plan: null, answer: null, chosen: null, chain: [], redraw: null, asked: 0, settings: DEFAULTS };
const history = createHistory();
const parts = {};

const fail = (error) => byId('trouble').replaceChildren(errorNotice(error));
const inUnit = (mm) => length(mm, state.settings.lengthUnit);
const view = () => ({ chosen: state.chosen, chain: state.chain, ring: state.ring });

/** A change by hand: it can be taken back, is kept, and planned anew. */
function change(plan, { rows = false } = {}) {
  history.note(state.plan);
  put(plan, rows);
}

function put(plan, rows) {
  state.plan = plan;
  parts.keeper.later(plan);
  refresh(rows);
  clearTimeout(state.timer);
  state.timer = setTimeout(plan.subjects.length ? compute : refresh, REST_MILLIS);
}

const on = {
  change: (name, patch, rows) => change(changed(state.plan, name, patch), { rows }),
  shift: (name, by) => { change(shifted(state.plan, name, by), { rows: true }); focusName(name); },
  remove: (name) => { change(removed(state.plan, name), { rows: true }); say(`${name} is removed; Undo brings it back.`); byId('drawing').focus(); },
  rename(old, name) {
    const next = renamed(state.plan, old, name);
    byId('drawing-trouble').textContent = next === state.plan && name.trim() !== old ? `There is already a subject called ${name.trim() || 'nothing'}; the old name stays.` : '';
    change(next, { rows: true });
  },
  named: () => byId('drawing').focus(),
  choose(name) { state.chosen = name; parts.surface.show(state.plan, view()); },
  redraw(name) { state.redraw = name; state.chosen = name; say(`Draw ${name} again; its old outline stays until then.`); byId('drawing').focus(); },
};

const say = (text) => { byId('drawing-said').textContent = text; };

function focusName(name) {
  const input = Array.from(document.querySelectorAll('.subject')).find((one) => one.dataset.name === name);
  if (input) {
    input.querySelector('input').focus();
  }
}

function closed(outline) {
  const again = state.redraw;
  state.redraw = null;
  change(again ? changed(state.plan, again, { outline_mm: outline }) : added(state.plan, outline), { rows: true });
  const name = again || state.plan.subjects[state.plan.subjects.length - 1].name;
  say(`${name} is outlined. Name it, then draw round what comes next behind it.`);
  focusName(name);
  if (!again && document.activeElement.select) {
    document.activeElement.select();
  }
}

function refresh(rows) {
  const { plan } = state;
  const drawn = plan.subjects.length > 0;
  byId('picture-title').textContent = drawn ? 'Draw round what comes next' : 'Draw round what is nearest';
  byId('work').classList.toggle('bare', !drawn);
  LATER_CARDS.forEach((id) => { byId(id).hidden = !drawn && id !== 'permission-card' && id !== 'file-card'; });
  byId('undo').disabled = !history.can().back;
  byId('redo').disabled = !history.can().forward;
  parts.surface.show(plan, view());
  if (rows) {
    showSubjects(byId('subjects'), plan, on, state.settings);
    showFronts(byId('fronts'), plan, state.answer, tell);
  }
  PLAN_CARDS.forEach((id) => { byId(id).hidden = plan.subjects.length < 2 || !state.answer || (id === 'values-card' && !plan.picture); });
  byId('let-go').hidden = !plan.subjects.some((one) => one.pin);
}

function tell(front, back) {
  change(told(state.plan, front, back), { rows: true });
  const next = byId('fronts').querySelector('button');
  (next || byId('drawing')).focus();
}

async function compute() {
  state.asked += 1;
  const mine = state.asked;
  try {
    const answer = await post('api/sheets/plan', request(state.plan));
    if (mine === state.asked) {
      take(answer);
    }
  } catch (error) {
    fail(error);
  }
}

const SHARP = { good: 'enough pixels to trace at this size', soft: 'soft at this size: trust the outlines', too_small: 'too few pixels for this size: only the outlines will serve' };

function take(answer) {
  const wrong = answer.problem || answer.impossible;
  state.chain = answer.impossible ? answer.impossible.chain : [];
  state.ring = state.chain.length > 0 && answer.impossible.reason === 'ring';
  byId('problem').replaceChildren(...(wrong ? [el('div', { class: 'notice bad' }, el('p', {}, el('strong', {}, wrong.message)),
    el('p', {}, state.chain.length ? 'The numbers on the picture show it. Take more sheets, let a subject go, or say anew which hides which. The stack below is the one before.' : 'Nothing is lost.'))] : []));
  if (answer.picture_sharpness) {
    byId('sharpness').textContent = `Picture: ${SHARP[answer.picture_sharpness]}.`;
  }
  if (!wrong) {
    state.answer = answer;
    state.plan = withSheets(state.plan, answer);
    parts.keeper.later(state.plan);
    showPlan(answer);
  }
  refresh(false);
  showFronts(byId('fronts'), state.plan, answer.problem ? null : answer, tell);
  document.documentElement.dataset.shown = '';
}

function showPlan(answer) {
  const pins = Object.fromEntries(state.plan.subjects.filter((one) => one.pin).map((one) => [one.name, one.pin]));
  const focused = document.activeElement && document.activeElement.dataset.name;
  parts.side = side(answer, pins, (name, sheet) => {
    change(changed(state.plan, name, { pin: sheet }), { rows: true });
    byId('said').textContent = `${name} is held on sheet ${sheet}.`;
  }, tryMove);
  byId('side').replaceChildren(parts.side);
  byId('notes').replaceChildren(...notes(answer, Object.keys(pins).length > 0));
  const mark = Array.from(document.querySelectorAll('.mark')).find((one) => one.dataset.name === focused);
  if (mark) {
    mark.focus();
  }
  parts.values.old();
  if (answer.subjects.length > 1) {
    parts.eye.show(state.plan, answer).catch(fail);
  }
}

/** While a mark is dragged: the others go where they would lie. One question at a time. */
async function tryMove(name, sheet) {
  state.trying = { name, sheet };
  if (state.tryingNow) {
    return;
  }
  state.tryingNow = true;
  while (state.trying) {
    const wish = state.trying;
    state.trying = null;
    const began = performance.now();
    const answer = await post('api/sheets/plan', request(state.plan, { [wish.name]: wish.sheet })).catch(() => null);
    if (answer && !answer.problem && !answer.impossible) {
      parts.side.follow(answer);
      byId('side').dataset.replannedMillis = (performance.now() - began).toFixed(1);
    }
  }
  state.tryingNow = false;
}

function kept(what, detail) {
  const words = { saving: 'Keeping …', kept: () => `Kept at ${new Date(detail).toLocaleTimeString()}.`, failed: 'Not kept yet.' }[what];
  byId('kept').textContent = typeof words === 'function' ? words() : words;
  byId('kept').dataset.state = what;
  if (what === 'failed') {
    fail(detail);
  }
}

function step(plan) {
  if (plan) {
    put(plan, true);
    showFormat(byId('format'), () => state.plan, change, state.settings);
  }
}

function connect(record) {
  parts.keeper = createKeeper(record, kept);
  parts.surface = createSurface({
    closed, said: say,
    trouble: (text) => byId('drawing-trouble').replaceChildren(...(text ? [el('p', { class: 'notice care' }, text)] : [])),
    draft(count) { byId('close-outline').disabled = count < 3; byId('drop-outline').disabled = !count; },
  }, inUnit);
  parts.eye = createEye(byId('eye'));
  parts.values = createValues(byId('values'), () => state.plan);
  byId('surface').append(parts.surface.node);
  byId('close-outline').addEventListener('click', parts.surface.close);
  byId('drop-outline').addEventListener('click', parts.surface.drop);
  byId('let-go').addEventListener('click', () => change(allLoose(state.plan), { rows: true }));
  byId('undo').addEventListener('click', () => step(history.back(state.plan)));
  byId('redo').addEventListener('click', () => step(history.forward(state.plan)));
  document.addEventListener('keydown', (event) => {
    const key = event.key.toLowerCase();
    if ((event.ctrlKey || event.metaKey) && (key === 'z' || key === 'y') && !event.target.matches('input')) {
      event.preventDefault();
      step(key === 'y' || event.shiftKey ? history.forward(state.plan) : history.back(state.plan));
    }
  });
}

async function open(id) {
  const record = await get(`api/plans/${id}`);
  connect(record);
  state.plan = { permission: {}, ...record.plan };
  state.plan.piece = { sheet_mm: [200, 150], thickness_mm: 3, ...state.plan.piece };
  byId('work').hidden = false;
  byId('bar-buttons').hidden = false;
  kept('kept', record.changed_at_millis);
  showFormat(byId('format'), () => state.plan, change, state.settings);
  showPermission(byId('permission'), state.plan, (permission) => change({ ...state.plan, permission }));
  showFileCard(byId('file'), record, () => state.plan, {
    flush: parts.keeper.flush,
    rename: (name) => change({ ...state.plan, name }),
    restored: () => window.location.reload(),
  });
  refresh(true);
  if (state.plan.subjects.length) {
    await compute();
  }
}

async function start() {
  wakeIcons();
  document.documentElement.dataset.ready = '';
  state.settings = await loadSettings().catch(() => DEFAULTS);
  const id = new URLSearchParams(window.location.search).get('p');
  await (id ? open(id) : showShelf(byId('chooser'), byId('trouble')));
}

start().catch(fail);
