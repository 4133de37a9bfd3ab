// Which prop is fitted, with what this phone has recorded since the office's card was made.

/** @param {any} part a position of the card @param {import('./outbox.js').Kept[]} own @returns {string | null} */
export function fittedNow(part, own) {
  const last = own.filter(e => e.position === part.position && ['prop_mounted', 'prop_removed', 'found_fitted'].includes(e.kind)).at(-1);
  if (last) return last.kind === 'prop_removed' ? null : last.record.prop ?? null;
  return part.mounting?.prop ?? null;
}
