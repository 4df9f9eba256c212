import { el } from '../dom.js';

const HEAT = [
  'The instructions of your kiln and of your glass maker come first; electric work belongs to a licensed electrician.',
  'Keep this laptop, its cable and the stick well away from the kiln: take a sheet of paper to the heat, not the screen.',
  'Kiln, shelf and glass burn for hours after the power is off, and hot glass looks like cold glass. Keep what can burn away.',
  'Look into a glowing kiln only through glasses rated for infrared; wear clear safety glasses when the cold kiln is opened.',
  'Air the room while binders smoke, and keep people and animals out. Be there at the top temperature.',
];
const DUST = [
  'Enamel, kiln wash and fibre paper make dust that harms lungs: work wet, wipe, never sweep or blow, and wear the respirator their safety sheets name.',
  'Some colors hold lead or cadmium. Do not eat here, keep brushes out of the mouth, wash your hands, keep children away.',
  'Wear safety glasses when you cut or grind.',
];

const list = (title, lines) => el('div', { class: 'notice care cautions' },
  el('p', {}, el('strong', {}, title)),
  el('ul', {}, lines.map((line) => el('li', {}, line))));

/** What must stand beside a firing schedule. */
export const heatCautions = () => list('Before the kiln is switched on', HEAT);

/** What must stand beside powders, fibre and cutting. */
export const dustCautions = () => list('Dust, eyes and hands', DUST);
