// Any entry, field by field: to change what the office has (a record that takes its place), or to mend what it refused.

import { h } from '../dom.js';
import { choice, numberField, pick, textField, tick, ticks, when } from '../fields.js';
import { form } from '../form.js';
import { happened } from '../clock.js';
import { entry, replace } from '../outbox.js';
import { once } from '../record.js';
import { go } from '../router.js';
import { send } from '../sending.js';
import { listOf } from '../spell.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';

/** The words that each list has, as the app offers them. @type {Record<string, string[]>} */
const OPTIONS = {
  object: ['rock', 'sand', 'wood', 'line', 'structure', 'unknown'], severity: ['no_mark', 'scuffed', 'chipped', 'bent', 'broken'], verdict: ['fit', 'watch', 'repair', 'take_off'],
  position: ['single', 'port', 'starboard', 'centre'], mark: ['chips', 'crack', 'edge_wear', 'bent_blade', 'corrosion', 'hub_slip', 'line_at_seal', 'water_in_oil', 'growth'],
  part: ['prop', 'hub', 'shaft', 'seal', 'gear_oil'], look: ['nothing_new', 'mark', 'damage'], moment: ['before_hire', 'after_hire', 'at_dock'], unit: ['newton_metre', 'pound_force_foot', 'kn', 'mph', 'km_per_h', 'm_per_s'],
  throttle: ['wide_open', 'part'], service: ['gear_oil', 'engine_oil', 'water_pump', 'anodes', 'plugs', 'shaft_greased'], out_why: ['strike', 'damage', 'service', 'office', 'other'], back_why: ['looked_at_dock', 'repaired', 'office'],
  off_why: ['service', 'worn', 'struck', 'shop', 'other_size', 'hub_slip'],
};

/** @param {string} field @param {string} kind @param {string | null} boat */
function optionsOf(field, kind, boat) {
  const list = listOf(field, kind) ?? '';
  const all = OPTIONS[list] ?? [];
  const fitted = state.today?.boats?.find((/** @type {any} */ b) => b.boat === boat)?.positions.map((/** @type {any} */ p) => p.position);
  if (list === 'position' && fitted) return fitted;
  return list === 'unit' ? all.filter(u => (field === 'torqueUnit') === (u === 'newton_metre' || u === 'pound_force_foot')) : all;
}

export async function show(/** @type {string} */ id) {
  const e = await entry(id);
  if (!e) return { title: t('dock-entry.none'), body: h('p', null, t('dock-entry.none_what')) };
  const mending = e.fate === 'refused' || e.fate === 'conflict' || e.fate === 'waiting';
  /** @type {Record<string, import('../fields.js').Field>} */
  const fields = {};
  const nodes = [];
  for (const leaf of leaves(e.record)) {
    const field = fieldOf(leaf, e.kind, e.boat);
    if (!field) continue;
    fields[leaf.path.join('/')] = field;
    const told = e.told.find(x => x.field === '/' + leaf.path.join('/'));
    if (told) field.say(told.message);
    nodes.push(field.node);
  }
  fields.when = when(e.zone, new Date(happened(e)));
  const general = e.told.filter(x => !fields[x.field.slice(1)] && e.fate === 'refused');
  const body = await form({
    key: 'change/' + id, fields, words: t(mending ? 'dock-entry.send_again' : 'dock-entry.send_change'),
    body: [h('p.quiet', null, t(mending ? 'dock-entry.mend_what' : 'dock-entry.change_what')), general.map(x => h('p.wrong', null, x.message)), nodes, fields.when.node],
    record: (values, draft) => once(async () => {
      const record = structuredClone(e.record);
      for (const [path, value] of Object.entries(values)) if (path !== 'when') put(record, path.split('/'), value);
      // The field knows no seconds: what shows the same minute was not changed.
      const before = new Date(happened(e));
      const at = values.when && Math.abs(values.when.getTime() - before.getTime()) >= 60_000 ? values.when : null;
      const made = await replace(id, record, at, draft);
      send();
      await go('/dock/entry/' + made.id, { replace: true });
    }),
  });
  return { title: t('dock-entry.change_title', { kind: w('kind', e.kind) }), body };
}

/** @param {any} node @param {string[]} path @returns {{ path: string[], name: string, value: any }[]} */
function leaves(node, path = []) {
  return Object.entries(node).flatMap(([key, value]) => {
    const here = [...path, key];
    if (Array.isArray(value) && value.every(v => typeof v !== 'object')) return [{ path: here, name: key, value }];
    return typeof value === 'object' && value !== null ? leaves(value, here) : [{ path: here, name: key, value }];
  });
}

/** @param {{ path: string[], name: string, value: any }} leaf @param {string} kind @param {string | null} boat */
function fieldOf({ path, name, value }, kind, boat) {
  if (name === 'boat' || name === 'retracts' || name === 'photo' || name === 'strike' || name === 'rule') return null;
  if (name === 'engine') return engineField(value, boat);
  const label = path.map(p => /^\d+$/.test(p) ? String(+p + 1) : w('field', p)).join(' ');
  const options = optionsOf(name, kind, boat);
  if (Array.isArray(value)) return typeof value[0] === 'number' ? null : ticks(label, listOf(name, kind) ?? name, options.length ? options : value, value);
  if (typeof value === 'boolean') return tick(label, value);
  if (typeof value === 'number') return numberField(label, { value, least: -50 });
  if (options.length > 0) return choice(label, listOf(name, kind) ?? name, options, { value });
  return textField(label, { value, needed: true });
}

/** Which of the boat's engines; one that has only one is not asked. @param {string} value @param {string | null} boat */
function engineField(value, boat) {
  const positions = state.today?.boats?.find((/** @type {any} */ b) => b.boat === boat)?.positions.filter((/** @type {any} */ p) => p.engine) ?? [];
  if (positions.length < 2 || !positions.some((/** @type {any} */ p) => p.engine.engine === value)) return null;
  return pick(w('field', 'engine'), positions.map((/** @type {any} */ p) => ({ value: p.engine.engine, words: w('position', p.position) })), { value });
}

/** @param {any} node @param {string[]} path @param {any} value */
function put(node, [key, ...rest], value) {
  if (rest.length > 0) put(node[key], rest, value);
  else if (value === null) delete node[key];
  else node[key] = value;
}
