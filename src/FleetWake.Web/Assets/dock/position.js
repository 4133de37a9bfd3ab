// Which engine, on boats that have more than one.

import { choice } from './fields.js';
import { h } from './dom.js';
import { t } from './texts.js';

/** @param {any} card @param {string | null=} value @param {(position: string) => void=} onpick @returns {import('./fields.js').Field} */
export function positionField(card, value, onpick) {
  const positions = card.positions.map((/** @type {any} */ p) => p.position);
  if (positions.length !== 1) return choice(t('dock-form.where'), 'position', positions, { value: positions.includes(value) ? value : null, onpick });
  return { node: h('div', { hidden: true }), get: () => positions[0], set: () => {}, say: () => {}, read: () => ({ value: positions[0] }) };
}

/** @param {any} card @param {string} position */
export const positionOf = (card, position) => position ?? card.positions[0].position;

/** @param {any} card @param {string} position */
export const partOf = (card, position) => card.positions.find((/** @type {any} */ p) => p.position === position) ?? { position };
