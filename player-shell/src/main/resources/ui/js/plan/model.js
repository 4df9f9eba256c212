import { shape } from '../sheets/plan.js';
import { tidy } from './shapes.js';

/** A plan and what can be done to it; every change gives a new plan. Millimetres throughout. */

const USUAL = { thickness_mm: 3, viewing_mm: 600, viewing_aside_mm: 150 };
const LONG_SIDE = 200;

/** A plan for a picture: sheets of its shape, nothing drawn yet. */
export function begin(picture, name) {
  const [wide, high] = picture.pixels;
  const scale = LONG_SIDE / Math.max(wide, high);
  const size = [Math.round(wide * scale), Math.round(high * scale)];
  const plan = { name, sheets: 5, mode: 'ordered', subjects: [], fade: { last_contrast: 0.25 }, piece: { sheet_mm: size, ...USUAL }, permission: {} };
  return { ...plan, picture: { ...picture, on_mm: placed(picture.pixels, size) } };
}

/** Where a picture lies on a sheet: as small as it can be with nothing left empty. */
export function placed([wide, high], [width, height]) {
  const scale = Math.max(width / wide, height / high);
  const left = (width - wide * scale) / 2;
  const upper = (height - high * scale) / 2;
  return [left, upper, left + wide * scale, upper + high * scale];
}

/** Another size of sheet: the picture covers it again, and what is drawn goes with the picture. */
export function resized(plan, size) {
  const piece = { ...plan.piece, sheet_mm: size };
  const [oldWide, oldHigh] = plan.piece.sheet_mm;
  const old = plan.picture ? plan.picture.on_mm : [0, 0, oldWide, oldHigh];
  const now = plan.picture ? placed(plan.picture.pixels, size) : placed([oldWide, oldHigh], size);
  const scale = (now[2] - now[0]) / (old[2] - old[0]);
  const move = ([x, y]) => tidy([now[0] + (x - old[0]) * scale, now[1] + (y - old[1]) * scale]);
  const subjects = plan.subjects.map((one) => (one.outline_mm ? { ...one, outline_mm: one.outline_mm.map(move) } : one));
  const horizon = plan.horizon_mm === undefined ? {} : { horizon_mm: now[1] + (plan.horizon_mm - old[1]) * scale };
  return { ...plan, piece, subjects, ...horizon, ...(plan.picture ? { picture: { ...plan.picture, on_mm: now } } : {}) };
}

/** A name that no subject has yet. */
export function freshName(plan) {
  let number = plan.subjects.length + 1;
  while (plan.subjects.some((one) => one.name === `subject ${number}`)) {
    number += 1;
  }
  return `subject ${number}`;
}

const ranked = (subjects) => subjects.map((one, at) => ({ ...one, rank: at + 1 }));

export function added(plan, outline) {
  return { ...plan, subjects: ranked([...plan.subjects, { name: freshName(plan), outline_mm: outline.map(tidy) }]) };
}

export function changed(plan, name, patch) {
  const subjects = plan.subjects.map((one) => (one.name === name ? { ...one, ...patch } : one));
  return { ...plan, subjects };
}

const withoutName = (names, name) => (names || []).filter((one) => one !== name);

export function removed(plan, name) {
  const left = plan.subjects.filter((one) => one.name !== name);
  return { ...plan, subjects: ranked(left.map((one) => ({ ...one, in_front_of: withoutName(one.in_front_of, name) }))) };
}

/** A new name, wherever the old one stands; the plan itself if the name is taken or empty. */
export function renamed(plan, old, wanted) {
  const name = wanted.trim().slice(0, 60);
  if (!name || plan.subjects.some((one) => one.name === name && name !== old)) {
    return plan;
  }
  const swap = (one) => (one === old ? name : one);
  return { ...plan, subjects: plan.subjects.map((one) => ({ ...one, name: swap(one.name), ...(one.in_front_of ? { in_front_of: one.in_front_of.map(swap) } : {}) })) };
}

/** One step nearer (-1) or farther (+1) in the row. */
export function shifted(plan, name, by) {
  const row = [...plan.subjects];
  const at = row.findIndex((one) => one.name === name);
  const to = at + by;
  if (to < 0 || to >= row.length) {
    return plan;
  }
  [row[at], row[to]] = [row[to], row[at]];
  return { ...plan, subjects: ranked(row) };
}

/** Says which of two is in front. */
export function told(plan, front, back) {
  const subjects = plan.subjects.map((one) => {
    if (one.name === front) {
      return { ...one, in_front_of: [...withoutName(one.in_front_of, back), back] };
    }
    return one.name === back ? { ...one, in_front_of: withoutName(one.in_front_of, front) } : one;
  });
  return { ...plan, subjects };
}

const lowest = (outline) => Math.max(...outline.map((point) => point[1]));

/** Nothing is held on a sheet by hand any more. */
export const allLoose = (plan) => ({ ...plan, subjects: plan.subjects.map(({ pin: held, ...one }) => one) });

/** A teacher's plan as one's own: each subject is held where the teacher has it, until it is let go. */
export function asOwn(plan, name) {
  const { use, ...rest } = plan;
  const subjects = plan.subjects.map((one) => ({ ...one, outline_mm: shape(one), ...(one.planned_on ? { pin: one.planned_on } : {}) }));
  return { ...rest, name, subjects: subjects.map(({ box_mm: box, ...one }) => one) };
}

/** What the bench is asked: pins stay, what was found before is found anew; feet from the horizon. */
export function request(plan, pins = {}) {
  const { horizon_mm: horizon, ...rest } = plan;
  const subjects = plan.subjects.map(({ planned_on: before, on_ground: stands, ...one }) => {
    const below = stands && horizon !== undefined && one.outline_mm ? lowest(one.outline_mm) - horizon : 0;
    const pin = one.name in pins ? pins[one.name] : one.pin;
    return { ...one, ...(below > 0 ? { foot_below_horizon_mm: below } : {}), pin: pin || undefined };
  });
  return { ...rest, subjects };
}

/** Keeps with each subject the sheet that was found for it. */
export function withSheets(plan, answer) {
  const sheets = Object.fromEntries(answer.subjects.map((one) => [one.name, one.sheet]));
  return { ...plan, subjects: plan.subjects.map((one) => ({ ...one, planned_on: sheets[one.name] })) };
}
