import { button, byId, el } from '../dom.js';
import { length, minutes, temperature } from '../units.js';
import { choice } from '../settings-form.js';
import { mapScale } from './map-scale.js';
import { heatColor, mapPicture, sampleAt, stressColor, whole } from './map-picture.js';

/** Why so slow? Temperature and stress inside the block over depth and time, two plans side by side. */

const KEY_STEPS = 120;
const HEIGHT = 170;
const SCALE_WIDTH = 420;

/** Where each plan was read last, so that a plan drawn anew is read at the same place. */
const reading = {};

const mpa = (value) => `${Math.abs(value) < 0.005 ? '0' : value.toFixed(2)} MPa ${value < -0.005 ? 'of pressure' : 'of tension'}`.replace('-', '');

/** One plan: two maps with one cross, moved by pointer or arrow keys, and the words for it. */
function planMaps(title, plan, end, settings, width) {
  const temperatures = whole(plan.celsius, plan.both_faces);
  const stresses = whole(plan.stress_mpa, plan.both_faces);
  const layers = temperatures[0].length;
  const hottest = Math.max(...temperatures.map((row) => Math.max(...row)));
  const depthLabels = [[0, 'top'], [1, length(plan.thickness_mm, settings.lengthUnit)]];
  const words = el('p', { class: 'map-words', role: 'status' }, 'Touch a map, or go into it and use the arrow keys.');
  const common = { hours: plan.hours, end, depthLabels, width, height: HEIGHT };
  const heat = mapPicture({
    ...common, rows: temperatures, color: (c) => heatColor(c / hottest), label: `${title}: temperature over depth and time. Arrow keys read it.`,
    lines: [{ value: plan.annealing_c, kind: 'soft' }, { value: plan.strain_c, kind: 'strain' }],
  });
  const pull = mapPicture({
    ...common, rows: stresses, color: (s) => stressColor(s / plan.limit_mpa), label: `${title}: stress over depth and time, limit ${plan.limit_mpa} MPa. Arrow keys read it.`,
    lines: [{ value: plan.limit_mpa, kind: 'limit' }],
  });
  const degrees = (c) => temperature(c, settings.temperatureUnit);
  const scaleWidth = Math.min(width, SCALE_WIDTH);
  const heatScale = mapScale({
    from: 0, to: hottest, color: (c) => heatColor(c / hottest), width: scaleWidth, label: 'Scale of temperature',
    marks: [[0, degrees(0)], [hottest, degrees(hottest)], [plan.strain_c, degrees(plan.strain_c)], [hottest / 3, degrees(hottest / 3)]],
  });
  const pullScale = mapScale({
    from: -plan.limit_mpa, to: plan.limit_mpa, color: (s) => stressColor(s / plan.limit_mpa), width: scaleWidth, label: 'Scale of stress',
    marks: [[-plan.limit_mpa, `−${plan.limit_mpa}`], [plan.limit_mpa, `${plan.limit_mpa} MPa`], [0, '0'], [plan.limit_mpa / 2, String(plan.limit_mpa / 2)], [-plan.limit_mpa / 2, `−${plan.limit_mpa / 2}`]],
  });
  const at = { hour: 0, layer: 0 };
  const show = (hour, layer) => {
    at.hour = Math.max(0, Math.min(plan.hours[plan.hours.length - 1], hour));
    at.layer = Math.max(0, Math.min(layers - 1, layer));
    reading[title] = { ...at };
    const i = sampleAt(plan.hours, at.hour);
    [heat, pull].forEach((map) => map.move(at.hour, at.layer));
    const depth = (at.layer / (layers - 1)) * plan.thickness_mm;
    words.textContent = `${minutes(at.hour * 60)} after the start, ${length(depth, settings.lengthUnit)} below the top: ${temperature(temperatures[i][at.layer], settings.temperatureUnit)}`
      + ` (kiln ${temperature(plan.kiln_c[i], settings.temperatureUnit)}), ${mpa(stresses[i][at.layer])}.`;
  };
  [heat, pull].forEach((map) => {
    map.picture.addEventListener('pointermove', (event) => {
      const box = map.picture.getBoundingClientRect();
      show(map.hourAt(event.clientX - box.left), map.layerAt(event.clientY - box.top));
    });
    map.picture.addEventListener('keydown', (event) => {
      const step = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] }[event.key];
      if (step) {
        event.preventDefault();
        show(at.hour + (step[0] * end) / KEY_STEPS, at.layer + step[1]);
      }
    });
  });
  if (reading[title]) {
    show(reading[title].hour, reading[title].layer);
  }
  const most = Math.max(...stresses.map((row) => Math.max(...row)));
  return el('section', { class: 'plan-maps' }, el('h3', {}, title),
    el('p', { class: 'map-title' }, `Temperature; lines where the glass passes its annealing and its strain point`), heatScale, heat.node,
    el('p', { class: 'map-title' }, `Stress: violet is tension, green is pressure; most ${most.toFixed(2)} of ${plan.limit_mpa} MPa allowed${most > plan.limit_mpa ? ', and the line shows where it is passed' : ''}`), pullScale, pull.node, words);
}

/** Puts a second plan beside mine: another caution, one sheet less, or as it is now. */
function besideChoice(store) {
  const { schedules, schedule, second } = store.getState();
  const options = [...schedules.map((one) => [one.asset, one.name.replace(/\.firing\.csv$/i, '')]), ['none', 'nothing'], ...(second ? [['second', 'the second plan']] : [])];
  const current = second ? 'second' : schedule ? schedule.asset : 'none';
  return el('div', { class: 'row' },
    choice({ key: 'beside', title: 'Beside it', options }, current, ({ beside }) => {
      if (beside !== 'second') {
        store.dispatch('beside', { schedule: schedules.find((one) => one.asset === beside) || null });
      }
    }),
    button({ id: 'hold-plan', text: 'Hold this plan, then change mine', onClick: () => store.dispatch('beside', { second: store.getState().setup }) }));
}

function draw(store) {
  const { inside, settings, second } = store.getState();
  const place = byId('maps');
  if (!inside) {
    place.replaceChildren(el('p', { class: 'quiet' }, 'Looking inside …'));
    return;
  }
  const focused = Array.from(place.querySelectorAll('.map-lines')).indexOf(document.activeElement);
  const plans = [['My firing', inside.mine], ...(inside.other ? [[second ? 'The second plan' : 'The lesson’s schedule', inside.other]] : [])];
  const end = Math.max(...plans.map(([, plan]) => plan.hours[plan.hours.length - 1]));
  const side = place.clientWidth > 760 && plans.length > 1;
  const width = Math.floor(side ? (place.clientWidth - 24) / 2 : place.clientWidth);
  place.replaceChildren(
    el('p', {}, 'Heat leaves a thick block slowly. Where glass is between its annealing and its strain point, every difference between top and core freezes in as stress that stays; below, a difference pulls for as long as it lasts. Slow lines keep the colors pale.'),
    besideChoice(store),
    el('div', { class: side ? 'side-by-side' : null }, plans.map(([title, plan]) => planMaps(title, plan, end, settings, width))));
  if (focused >= 0) {
    place.querySelectorAll('.map-lines')[focused]?.focus();
  }
}

export function connectInside(store) {
  const details = byId('inside');
  details.addEventListener('toggle', () => {
    store.dispatch('insideOpen', details.open);
    draw(store);
  });
  const redraw = () => details.open && draw(store);
  store.watch((state) => state.inside, redraw);
  store.watch((state) => state.settings, redraw);
  let width = 0;
  new ResizeObserver(() => {
    if (details.open && Math.abs(byId('maps').clientWidth - width) > 4) {
      width = byId('maps').clientWidth;
      redraw();
    }
  }).observe(details);
}
