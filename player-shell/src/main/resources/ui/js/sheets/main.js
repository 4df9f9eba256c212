import { address, get, post } from '../api.js';
import { byId, el, wakeIcons } from '../dom.js';
import { numberField } from '../fields.js';
import { errorNotice } from '../notice.js';
import { collectPapers } from '../lesson/papers.js';
import { saveText } from '../save-text.js';
import { permissionLine } from '../plan/permission.js';
import { DEFAULTS, loadSettings } from '../settings.js';
import { layOut } from '../template/lay-out.js';
import { length } from '../units.js';
import { PAPERS } from '../template/tiles.js';
import { cutSheet, template } from './drawings.js';
import { dams, notes, sheetTable } from './lists.js';
import { connectMyPiece, pieceOf } from './my-piece.js';
import { connectPapers, cutQuestion } from './papers.js';
import { planSize, readPlan, request, shownPlan, subjects } from './plan.js';
import { loadDrawer, showShopping } from './shop.js';
import { side } from './side.js';

const SIDE = { min: 10, max: 3000 };
const FIELDS = [
  { name: 'width', label: 'Width', kind: 'mm', ...SIDE }, { name: 'height', label: 'Height', kind: 'mm', ...SIDE },
  { name: 'sheets', label: 'Sheets', min: 1, max: 60, whole: true }, { name: 'thickness', label: 'One sheet, thick', kind: 'mm', min: 0.5, max: 25 },
  { name: 'stockWidth', label: 'Stock width', kind: 'mm', ...SIDE }, { name: 'stockHeight', label: 'Stock height', kind: 'mm', ...SIDE },
  { name: 'spare', label: 'Spare sheets', min: 0, max: 20, whole: true }, { name: 'pieces', label: 'Pieces (class)', min: 1, max: 100, whole: true },
  { name: 'firings', label: 'Firings in all', min: 1, max: 600, whole: true },
  { name: 'stripThick', label: 'Dam strips, thick', kind: 'mm', min: 5, max: 100 }, { name: 'stripHigh', label: 'Dam strips, high', kind: 'mm', min: 5, max: 300 },
  { name: 'shelfWidth', label: 'Kiln shelf, width', kind: 'mm', ...SIDE, optional: true }, { name: 'shelfDepth', label: 'Kiln shelf, depth', kind: 'mm', ...SIDE, optional: true },
];
const TYPING_MILLIS = 300;

const state = {
  plan: null, teacher: null, answer: null, pins: {}, rows: [], drawer: {}, unit: 'mm', from: null, piece: null,
  own: { width: 200, height: 150, sheets: 1, thickness: 3, stockWidth: 600, stockHeight: 500, spare: 1, pieces: 1, firings: 1, stripThick: 20, stripHigh: 40, shelfWidth: null, shelfDepth: null, mirrored: false },
};

const problemOf = (answer) => {
  if (answer.problem) {
    return answer.problem.message;
  }
  return answer.impossible ? answer.impossible.message : null;
};

function fieldNodes() {
  return FIELDS.map((spec) => numberField({
    ...spec, id: `own-${spec.name}`, value: state.own[spec.name],
    onChange: (value) => {
      state.own[spec.name] = value;
      if (spec.name === 'sheets') {
        state.pins = {};
      }
      clearTimeout(state.typing);
      state.typing = setTimeout(compute, TYPING_MILLIS);
    },
  }, { lengthUnit: state.unit }));
}

function move(name, sheet) {
  const before = { ...state.pins };
  // what stands stays where it is: only the one that was moved goes elsewhere
  const standing = state.answer.subjects.map((one) => [one.name, one.sheet]);
  state.pins = { ...Object.fromEntries(standing), [name]: sheet };
  compute().then((done) => {
    if (!done) {
      state.pins = before;
      draw();
    }
    byId('said').textContent = done ? `${name} is on sheet ${sheet}.` : `${name} stays where it was.`;
    const mark = Array.from(document.querySelectorAll('.mark')).find((one) => one.dataset.name === name);
    if (mark) {
      mark.focus();
    }
  });
}

function draw() {
  const { answer, own, unit } = state;
  const shapes = subjects(state.plan, own, {});
  byId('side').replaceChildren(side(answer, state.pins, move));
  byId('sheet-list').replaceChildren(sheetTable(answer, unit));
  byId('notes').replaceChildren(...notes(answer, Object.keys(state.pins).length > 0));
  byId('dams').replaceChildren(...dams(answer.block, unit));
  lowDams();
  layOut(answer.sheet_list.map((entry) => template(entry, answer, shapes, own)), byId('paper-size').value);
  document.documentElement.dataset.shown = '';
}

/** Dams that are too low are said where their height is typed; the plan stays. */
function lowDams() {
  const least = state.answer.block.least_dam_mm;
  const low = state.own.stripHigh < least - 1e-9;
  byId('own-stripHigh-trouble').textContent = low ? `This pile needs dams of at least ${length(least, state.unit)}.` : '';
}

async function cut() {
  const answer = await post('api/sheets/cut', cutQuestion(state.own));
  byId('cut').replaceChildren(...(answer.problem ? [el('p', { class: 'notice care' }, answer.problem.message)] : [
    el('p', {}, answer.message), ...answer.sheets.map((sheet) => cutSheet(sheet, answer)),
    el('p', { class: 'hint' }, 'Score and snap in the order of the numbers.'),
    ...(answer.scores.some((one) => one.too_narrow_to_snap) ? [el('p', { class: 'notice care' }, 'A strip beside a score is too narrow to snap: nibble it off.')] : []),
  ]));
}

const shop = () => showShopping(state, fail);

/** Asks anew; the plan that stands stays when the new one is impossible. */
async function compute() {
  try {
    const answer = await post('api/sheets/plan', request(state.plan, state.own, state.pins, state.teacher));
    const problem = problemOf(answer);
    byId('problem').replaceChildren(...(problem ? [el('p', { class: 'notice bad' }, problem, ' The plan below is the one before.')] : []));
    if (problem) {
      return false;
    }
    state.answer = answer;
    draw();
    await Promise.all([cut(), shop()]);
    return true;
  } catch (error) {
    fail(error);
    return false;
  }
}

const fail = (error) => byId('trouble').replaceChildren(errorNotice(error));

/** Takes a plan: its own format first, so that the teacher's sheets are known. */
async function take(plan) {
  const size = planSize(plan);
  Object.assign(state, { plan, teacher: null, pins: {}, from: null });
  Object.assign(state.own, { ...size, sheets: plan.sheets || 1, thickness: (plan.piece && plan.piece.thickness_mm) || 3, licence: plan.use || permissionLine(plan.permission) });
  const [thick, high] = (plan.piece && plan.piece.strip_mm) || [20, 40];
  const [shelfWidth, shelfDepth] = (plan.piece && plan.piece.shelf_mm) || [state.own.shelfWidth, state.own.shelfDepth];
  Object.assign(state.own, { stripThick: thick, stripHigh: high, shelfWidth, shelfDepth });
  byId('plan-name').textContent = plan.name || '';
  byId('own-fields').replaceChildren(...fieldNodes());
  byId('work').hidden = false;
  if (await compute()) {
    state.teacher = state.answer.subjects.map((one) => one.sheet);
  }
}

/** The lesson's materials, and the way back to it. */
async function rowsOf(query) {
  const lesson = await get('api/lesson', query);
  byId('back').href = address('lesson.html', query);
  byId('back-words').textContent = lesson.lesson.title;
  state.rows = (lesson.materials || []).flatMap((list) => list.rows || [])
    .map(({ item, amount, unit, per, itemNo, where }) => ({ item, amount, unit: unit || '', per, itemNo: itemNo || '', where: where || '' }));
  return lesson;
}

async function fromLesson(place) {
  const lesson = await rowsOf({ e: place.get('e') || '', l: place.get('l') });
  const plans = collectPapers(lesson).filter((paper) => paper.role === 'LAYER_PLAN');
  const paper = plans.find((one) => one.id === place.get('a')) || plans[0];
  if (paper) {
    const response = await fetch(address(paper.url));
    await take(readPlan(await response.text()));
    state.from = { e: place.get('e') || '', l: place.get('l'), a: paper.id };
  } else {
    byId('trouble').replaceChildren(el('p', { class: 'notice' }, 'This lesson has no plan of sheets. Open one of your own, above.'));
  }
}

function connect() {
  const paper = byId('paper-size');
  paper.append(...Object.entries(PAPERS).map(([id, one]) => el('option', { value: id }, one.title)));
  paper.value = state.unit === 'in' ? 'letter' : 'a4';
  paper.addEventListener('change', draw);
  byId('mirrored').addEventListener('change', (event) => { state.own.mirrored = event.target.checked; draw(); });
  ['templates', 'lists'].forEach((what) => byId(`print-${what}`).addEventListener('click', () => {
    document.documentElement.dataset.print = what;
    window.print();
  }));
  connectPapers(state);
  connectMyPiece(state);
  byId('save-plan').addEventListener('click', () => {
    if (state.answer) {
      const kept = shownPlan(state);
      saveText(`${JSON.stringify(kept, null, 2)}\n`, `${kept.name || 'My piece'}.layers.yaml`);
    }
  });
  byId('open-plan').addEventListener('change', async (event) => {
    const [file] = event.target.files;
    if (file) {
      try {
        await take(readPlan(await file.text()));
        byId('trouble').replaceChildren();
      } catch (notAPlan) {
        byId('trouble').replaceChildren(el('p', { class: 'notice bad' }, `${file.name} is no plan of sheets. Nothing was changed; choose a file that ends with .layers.yaml.`));
      }
    }
  });
}

async function start() {
  wakeIcons();
  document.documentElement.dataset.ready = '';
  state.unit = (await loadSettings().catch(() => DEFAULTS)).lengthUnit;
  connect();
  const place = new URLSearchParams(window.location.search);
  state.drawer = await loadDrawer();
  const own = await pieceOf(place);
  if (own && own.piece.lesson) {
    await rowsOf({ e: own.piece.edition, l: own.piece.lesson }).catch(() => undefined); // the lesson's stick may not be in
  }
  if (own) {
    state.piece = own.piece;
    state.showPiece();
  }
  if (place.get('p')) {
    const record = await get(`api/plans/${place.get('p')}`);
    byId('back').href = address('ui/plan.html', { p: record.id });
    byId('back-words').textContent = record.name;
    await take(record.plan);
  } else if (own && own.plan) {
    await take(own.plan);
    state.from = own.piece.lesson ? { e: own.piece.edition, l: own.piece.lesson } : null;
  } else if (place.get('l')) {
    await fromLesson(place);
  } else {
    byId('trouble').replaceChildren(el('p', { class: 'notice' }, 'Open a plan of sheets, above; a lesson that has one opens this page with it.'));
  }
}

start().catch(fail);
