// How a prop, a band and a torque are said.

import { t, number, w } from './texts.js';

const NM_PER_LBFT = 1.3558179483314004;

/** @param {any} m a mounting or a spare */
export function propWords(m) {
  if (m.size) return [m.size, m.blades ? t('dock-card.blades', { n: m.blades }) : null, m.material ? w('material', m.material) : null].filter(Boolean).join(', ');
  return [`${number(m.diameterInches, 2)} × ${number(m.pitchInches, 2)}`, m.blades ? t('dock-card.blades', { n: m.blades }) : null, m.material ? w('material', m.material) : null, m.rotation === 'left' ? w('rotation', m.rotation) : null].filter(Boolean).join(', ');
}

/** @param {{ low: number, high: number } | null | undefined} band */
export const bandWords = band => band?.low && band?.high ? t('dock-card.rpm', { low: number(band.low), high: number(band.high) }) : t('dock-card.see_manual');

/**
 * The torque of an engine, from the manual and from nowhere else.
 * @param {any} engine
 * @returns {{ low: number, high: number | null, unit: 'newton_metre' | 'pound_force_foot' } | null}
 */
export function torqueOf(engine) {
  const range = engine?.fastening?.torqueRange;
  if (range?.low) return { low: range.low.value, high: range.high && range.high.value !== range.low.value ? range.high.value : null, unit: range.low.unit };
  const torque = engine?.torque;
  return torque ? { low: torque.value, high: null, unit: torque.unit } : null;
}

/** @param {number} value @param {string} from @param {string} to */
export const convert = (value, from, to) => from === to ? value : from === 'newton_metre' ? value / NM_PER_LBFT : value * NM_PER_LBFT;

/** In the manual's unit, the other behind it. @param {any} engine */
export function torqueWords(engine) {
  const torque = torqueOf(engine);
  if (!torque) return t('dock-card.see_manual');
  const other = torque.unit === 'newton_metre' ? 'pound_force_foot' : 'newton_metre';
  const say = (/** @type {string} */ unit) => [torque.low, torque.high].filter(v => v !== null).map(v => number(convert(/** @type {number} */ (v), torque.unit, unit), unit === torque.unit ? 1 : 0)).join(' – ') + ' ' + w('unit', unit);
  return `${say(torque.unit)} (${say(other)})`;
}

/** Spares that fit, or of which nothing says that they do not. @param {any} position */
export const fitsOf = position => (position.fits ?? []).filter((/** @type {any} */ f) => f.answer !== 'near_miss');

/** @param {{ here: boolean, dock?: string }} f */
export const placeOf = f => f.here ? t('dock-card.lies_here') : f.dock ? t('dock-card.lies_at', { dock: f.dock }) : t('dock-tag.not_known');
