import { numberField } from '../fields.js';
import { resized } from './model.js';

/** The glass: size, sheets, thickness, from where it is seen, how pale the back gets. */
export function showFormat(place, getPlan, onChange, settings) {
  const plan = getPlan();
  const piece = (key) => (value) => onChange({ ...getPlan(), piece: { ...getPlan().piece, [key]: value } });
  const side = (at) => (value) => {
    const size = [...getPlan().piece.sheet_mm];
    size[at] = value;
    onChange(resized(getPlan(), size));
  };
  const field = (id, label, spec) => numberField({ id, label, ...spec }, settings);
  place.replaceChildren(
    field('width', 'Width', { kind: 'mm', min: 10, max: 3000, value: plan.piece.sheet_mm[0], onChange: side(0) }),
    field('height', 'Height', { kind: 'mm', min: 10, max: 3000, value: plan.piece.sheet_mm[1], onChange: side(1) }),
    field('sheets', 'Sheets', { min: 1, max: 60, whole: true, value: plan.sheets, onChange: (value) => onChange({ ...getPlan(), sheets: value }) }),
    field('thickness', 'One sheet, thick', { kind: 'mm', min: 0.5, max: 25, value: plan.piece.thickness_mm || 3, onChange: piece('thickness_mm') }),
    field('viewing', 'Seen from', { kind: 'mm', min: 100, max: 10000, value: plan.piece.viewing_mm || 600, onChange: piece('viewing_mm') }),
    field('kept', 'Contrast kept at the back', { kind: '%', min: 1, max: 100, value: 100 * ((plan.fade || {}).last_contrast || 0.25), onChange: (value) => onChange({ ...getPlan(), fade: { ...getPlan().fade, last_contrast: value / 100 } }) }),
    field('horizon', 'Horizon, from above', { kind: 'mm', min: -3000, max: 3000, optional: true, value: plan.horizon_mm, hint: 'Only for subjects that stand on the ground.', onChange: (value) => onChange({ ...getPlan(), horizon_mm: value === null ? undefined : value }) }));
}
