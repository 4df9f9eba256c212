/** What is in the kiln, as the page knows it, and the question that it becomes for the bench. */

export const FIRST = Object.freeze({
  task: 'fuse', glass: 'coe-90', by: 'sheets', sheets: 6, sheet_mm: 3,
  sheet_length_mm: null, sheet_width_mm: null, bed_length_mm: null, bed_width_mm: null, liner_mm: 3,
  grams: null, measured_mm: null, dams: true, faces: 'one', shelf_mm: 0, kiln: '', caution: 'published', top_c: null,
  clock: { mode: 'start', at: '', lid: 'day' },
  tariff: { currency: '', day: null, night: null, night_from: 22, night_to: 6 },
});

export const TASKS = [
  ['fuse', 'Fuse loose sheets'], ['refire', 'Fire a fused block again'], ['anneal', 'Anneal a block again'], ['enamel', 'Fire enamel on one sheet'],
];

const ENAMEL_BELOW_C = 660;
const USUAL_COOLING_H = 3;
const HOURS = 24;

/** A lesson's highest line says what its firing is for. */
const topOf = (schedule) => Math.max(...schedule.segments.map((segment) => segment.targetC || 0));

/** The lesson's block as a first setup; what it does not state stays as it was. */
export function fromLesson(setup, lesson, schedule) {
  const { stated } = lesson;
  const enamel = schedule && topOf(schedule) < ENAMEL_BELOW_C;
  const next = { ...setup, faces: stated.faces || setup.faces, glass: stated.glass || setup.glass, task: enamel ? 'enamel' : 'fuse' };
  if (stated.sheets && stated.sheet_mm) {
    return { ...next, by: 'sheets', sheets: stated.sheets, sheet_mm: stated.sheet_mm };
  }
  return stated.fused_mm && !enamel ? { ...next, by: 'measured', measured_mm: stated.fused_mm } : next;
}

export const isFused = (setup) => setup.task === 'refire' || setup.task === 'anneal';

function stackOf(setup) {
  if (setup.task === 'enamel') {
    return { by: 'sheets', sheets: 1, sheet_mm: setup.sheet_mm };
  }
  const keys = {
    sheets: ['sheets', 'sheet_mm'],
    volume: ['sheets', 'sheet_mm', 'sheet_length_mm', 'sheet_width_mm', 'bed_length_mm', 'bed_width_mm', 'liner_mm'],
    weight: ['grams', 'bed_length_mm', 'bed_width_mm', 'liner_mm'],
    measured: ['measured_mm', 'bed_length_mm', 'bed_width_mm'],
  }[setup.by];
  const stack = { by: setup.by };
  keys.filter((key) => setup[key] !== null).forEach((key) => { stack[key] = setup[key]; });
  return stack;
}

const find = (entries, id) => (entries || []).find((entry) => entry.id === id);

export const kilnOf = (state, setup = state.setup) => find(state.kilns, setup.kiln);

/** The kiln for the bench; an undescribed one has the ordinary controller, in the page's unit. */
function kilnAsked(state, setup) {
  const own = kilnOf(state, setup);
  return own ? { ...own.figures } : { unit: state.settings.temperatureUnit, free_code: 'free' };
}

function glassAsked(state, setup) {
  const own = find(state.glasses, setup.glass);
  return own ? { ...own.figures, name: own.name } : setup.glass;
}

/** Twenty-four prices from a day and a night price. */
export function pricesByHour(tariff) {
  const night = tariff.night === null ? tariff.day : tariff.night;
  const isNight = (hour) => (tariff.night_from > tariff.night_to
    ? hour >= tariff.night_from || hour < tariff.night_to
    : hour >= tariff.night_from && hour < tariff.night_to);
  return Array.from({ length: HOURS }, (unused, hour) => (isNight(hour) ? night : tariff.day));
}

function plainRequest(state, setup) {
  const request = {
    glass: glassAsked(state, setup),
    task: setup.task,
    state: isFused(setup) ? 'fused' : 'loose',
    faces: setup.faces,
    shelf_mm: setup.faces === 'both' ? 0 : setup.shelf_mm,
    caution: setup.caution,
    kiln: kilnAsked(state, setup),
    stack: stackOf(setup),
  };
  if (setup.top_c !== null && setup.task !== 'anneal') {
    request.top_c = setup.top_c;
  }
  return request;
}

/** A lesson's schedule, as it is written, in the same kiln. */
function scheduleBeside(state, schedule) {
  const kiln = kilnOf(state);
  const pace = kiln ? kiln.figures : {};
  return {
    segments: schedule.segments.filter((line) => line.targetC !== null && line.targetC !== undefined).map((line) => ({
      name: String(line.name), rate_c_per_h: line.rateCPerH === undefined ? null : line.rateCPerH, target_c: line.targetC, hold_min: line.holdMin || 0,
    })),
    kiln: { cooling_h: pace.cooling_h || USUAL_COOLING_H, ...(pace.heating_c_per_h ? { heating_c_per_h: pace.heating_c_per_h } : {}), ...(pace.room_c ? { room_c: pace.room_c } : {}) },
  };
}

/** The whole question of the page. */
export function requestOf(state) {
  const { setup, schedule, second } = state;
  const request = { ...plainRequest(state, setup), clock: { mode: setup.clock.mode, lid: setup.clock.lid } };
  if (setup.clock.at) {
    request.clock.at = setup.clock.at;
  }
  if (setup.tariff.day !== null) {
    request.tariff = { currency: setup.tariff.currency, per_kwh: pricesByHour(setup.tariff) };
  }
  if (second) {
    request.other = plainRequest(state, second);
  } else if (schedule) {
    request.other = scheduleBeside(state, schedule);
  }
  return request;
}
