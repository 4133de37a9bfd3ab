// The nut and what holds it: the torque of the manual in its own unit, and the next slot of a castle nut.

import { fill, h } from './dom.js';
import { numberField } from './fields.js';
import { number, t, w } from './texts.js';
import { convert, torqueOf, torqueWords } from './words.js';

/** @param {any} engine @returns {'castle_nut_cotter_pin' | 'lock_nut' | 'tab_washer' | 'shear_pin' | 'unknown'} */
export const fasteningOf = engine => engine?.fastening?.kind ?? 'unknown';

/** The torque reached, in the manual's unit; what it is in the other stands beside. @param {any} engine */
export function torqueField(engine) {
  const manual = torqueOf(engine);
  const unit = manual?.unit ?? 'newton_metre';
  const other = unit === 'newton_metre' ? 'pound_force_foot' : 'newton_metre';
  const beside = h('p.small', { role: 'status' });
  const field = numberField(t('dock-mounting.torque'), {
    unit: w('unit', unit), least: 1, most: 1000, hint: manual ? t('dock-mounting.torque_manual', { torque: torqueWords(engine) }) : t('dock-mounting.torque_unknown'),
    oninput: () => {
      const { value, wrong } = field.read();
      if (value === null || wrong) { fill(beside); return; }
      const words = [t('dock-mounting.torque_is', { n: number(convert(value, unit, other), 1), unit: w('unit', other) })];
      if (manual && value < manual.low - 0.01) words.push(h('strong.wrong', null, ' ' + t('dock-mounting.torque_low')));
      if (manual && value > (manual.high ?? manual.low) + 0.01) words.push(h('strong.wrong', null, ' ' + t(manual.high ? 'dock-mounting.torque_high' : 'dock-mounting.torque_above')));
      fill(beside, ...words);
    },
  });
  field.node.append(beside);
  return { ...field, unit };
}

/** Only a castle nut has slots; the other kinds are told what holds them. @param {any} engine */
export function nutHelp(engine) {
  const kind = fasteningOf(engine);
  if (kind !== 'castle_nut_cotter_pin') return kind === 'unknown' ? h('p.note', null, t('dock-mounting.fastening_unknown')) : h('p.note', null, t('dock-mounting.fastening_' + kind));
  const manual = torqueOf(engine);
  const most = engine.fastening.slots;
  return h('details.nut', { open: true }, h('summary', null, t('dock-mounting.slot_question')),
    h('p', null, h('strong', null, t('dock-mounting.slot_answer'))),
    h('p', null, manual?.high ? t('dock-mounting.slot_range', { high: `${number(manual.high, 1)} ${w('unit', manual.unit)}` }) : t('dock-mounting.slot_single')),
    most === null || most === undefined ? null : h('p', null, t('dock-mounting.slot_most', { n: most })),
    h('p', null, t('dock-mounting.slot_else')));
}
