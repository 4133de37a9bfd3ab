// Whether a boat goes out, with what this phone knows and the office does not yet: a record made here can keep a boat at
// once, and never lets one go; that is the office's to say, from all records.

import { entries, entriesOf } from './outbox.js';
import { state } from './state.js';
import { t, w } from './texts.js';
import { isStale } from './today.js';

const RANK = { in_hire: 0, look_first: 1, out: 2 };
const USUAL = [
  { severity: 'no_mark', state: 'in_hire' }, { severity: 'scuffed', state: 'look_first' }, { severity: 'chipped', state: 'out' }, { severity: 'bent', state: 'out' }, { severity: 'broken', state: 'out' },
  { verdict: 'fit', state: 'in_hire' }, { verdict: 'watch', state: 'in_hire' }, { verdict: 'repair', state: 'look_first' }, { verdict: 'take_off', state: 'out' },
];

/** By how much the clocks of the office's machines may differ [ms]. */
const APART = 5_000;

/**
 * What was recorded on this phone about a boat and is not in the office's card.
 * @param {any} card @param {string} madeAt when the card was made @returns {Promise<import('./outbox.js').Kept[]>} oldest first
 */
export const ownOf = async (card, madeAt) => notIn(card, madeAt, await entriesOf(card.boat));

/** The same for every boat of a list, by boat. @param {any[]} cards @param {string} madeAt @returns {Promise<Map<string, import('./outbox.js').Kept[]>>} */
export async function ownOfAll(cards, madeAt) {
  const byBoat = Map.groupBy ? Map.groupBy(await entries(), e => e.boat) : group(await entries());
  return new Map(cards.map(c => [c.boat, notIn(c, madeAt, byBoat.get(c.boat) ?? [])]));
}

/** @param {import('./outbox.js').Kept[]} list */
function group(list) {
  const map = new Map();
  for (const e of list) { if (!map.has(e.boat)) map.set(e.boat, []); map.get(e.boat).push(e); }
  return map;
}

/** @param {any} card @param {string} madeAt @param {import('./outbox.js').Kept[]} list the newest first */
function notIn(card, madeAt, list) {
  const takenBack = new Set(list.filter(e => e.fate === 'waiting' || e.fate === 'sent' || e.fate === 'held').map(e => e.record.retracts ?? e.amends));
  // A card that says so has every record that was answered before it was made.
  const open = new Set(card.positions.flatMap((/** @type {any} */ p) => (p.openStrikes ?? []).map((/** @type {any} */ s) => s.entry)));
  const counted = (/** @type {import('./outbox.js').Kept} */ e) => open.has(e.id) || card.upToDate !== false && Date.parse(madeAt) > (e.countedAfter ?? e.answeredAt ?? 0) + APART;
  const stays = (/** @type {import('./outbox.js').Kept} */ e) => e.fate === 'waiting' || ((e.fate === 'sent' || e.fate === 'held') && !counted(e))
    // The office has none of these, or counts none of them: what somebody saw keeps the boat all the same, until it is taken back.
    || ((e.fate === 'refused' || e.fate === 'conflict' || e.fate === 'kept_back') && effectOf(e, undefined) !== null);
  return list.filter(e => !takenBack.has(e.id) && e.kind !== 'retracted' && stays(e)).reverse();
}

/** By the operator's table; the strictest of all materials where it is not known. @param {'severity' | 'verdict'} what @param {string} word @param {string | undefined} material */
function byTable(what, word, material) {
  const told = state.today?.policy?.hire?.rows ?? state.today?.policy?.hire;
  const rows = [...(Array.isArray(told) ? told : []), ...USUAL];
  const words = (material ? [material] : ['composite', 'aluminium', 'stainless']).map(m => rows.find(r => r[what] === word && (r.material ?? m) === m)?.state ?? 'out');
  return words.reduce((a, b) => rank(b) > rank(a) ? b : a);
}

const rank = (/** @type {string} */ word) => /** @type {any} */ (RANK)[word] ?? 2;

/**
 * The hire state as this phone shows it.
 * @param {any} card @param {string} madeAt @param {import('./outbox.js').Kept[]} own
 * @returns {{ word: string, why?: 'old' | 'behind', kind: 'in' | 'look' | 'out', words: string, reasons: any[] }} `why`: of "ask"
 */
export function hireOf(card, madeAt, own) {
  const reasons = [...(card.hire?.reasons ?? [])];
  let word = card.hire?.word ?? 'out';
  for (const e of own) {
    const position = card.positions.find((/** @type {any} */ p) => p.position === e.position);
    const effect = effectOf(e, position?.mounting?.material);
    if (!effect || rank(effect.word) === 0) continue;
    reasons.unshift({ sentence: effect.sentence, releasedBy: t('dock-card.released_later'), own: true });
    if (rank(effect.word) > rank(word)) word = effect.word;
  }

  // An old list must never say that a boat may go, nor one that lacks what the office has.
  const why = isStale(madeAt) ? 'old' : card.upToDate === false ? 'behind' : null;
  if (word === 'in_hire' && why) return { word: 'ask', why, kind: 'look', words: t('dock.ask_office'), reasons };
  return { word, kind: word === 'in_hire' ? 'in' : word === 'look_first' ? 'look' : 'out', words: w('hire', word), reasons };
}

/** @param {import('./outbox.js').Kept} e @param {string | undefined} material */
function effectOf(e, material) {
  const r = e.record;
  if (e.kind === 'strike_reported') return { word: byTable('severity', r.severity, material), sentence: t('dock-card.own_strike', { object: w('object', r.object), severity: w('severity', r.severity) }) };
  if (e.kind === 'inspected' && r.verdict !== 'fit') {
    const keeps = (r.marks ?? []).some((/** @type {string} */ m) => m === 'hub_slip' || m === 'crack');
    return { word: keeps ? 'out' : byTable('verdict', r.verdict, material), sentence: t('dock-card.own_verdict', { verdict: w('verdict', r.verdict) }) };
  }
  if (e.kind === 'looked_over' && r.seen === 'damage') return { word: 'look_first', sentence: t('dock-card.own_damage') };
  if (e.kind === 'out_of_hire') return { word: 'out', sentence: t('dock-card.own_out', { why: w('out_why', r.why) }) };
  return null;
}

/** Boats in the order in which somebody has to care. @param {any[]} boats @param {Map<string, string>} words hire word by boat */
export function mostUrgentFirst(boats, words) {
  const weight = (/** @type {any} */ b) => rank(words.get(b.boat) === 'ask' ? 'in_hire' : words.get(b.boat) ?? 'in_hire') * 100
    + (b.due ?? []).filter((/** @type {any} */ d) => d.overdue).length * 10 + Math.min(9, (b.attention ?? []).length);
  return [...boats].sort((a, b) => weight(b) - weight(a) || String(a.name).localeCompare(b.name));
}
