// Fields for wet hands: large, few, and each keeps what was typed until it is recorded.

import { fill, freshId, h } from './dom.js';
import { rightNow } from './state.js';
import { mayBeThousands, readNumber, t, w } from './texts.js';
import { inputIn, instantIn } from './time.js';

/**
 * @typedef {{ node: any, get: () => any, set: (value: any) => void, read: () => { value: any, wrong?: string }, say: (wrong: string | null) => void }} Field
 *   `get` and `set` hold what was typed, for a draft; `read` what it means
 */

/** @param {any} target what is described @param {any} place */
function sayer(target, place) {
  const id = freshId();
  place.id = id;
  return (/** @type {string | null} */ wrong) => {
    fill(place, wrong ?? '');
    if (wrong) { target.setAttribute('aria-invalid', 'true'); target.setAttribute('aria-describedby', id); }
    else { target.removeAttribute('aria-invalid'); target.removeAttribute('aria-describedby'); }
  };
}

/**
 * One of a few words, as large keys.
 * @param {string} label @param {string} list of texts @param {string[]} options
 * @param {{ value?: string | null, optional?: boolean, words?: (option: string) => any, onpick?: (option: string) => void }=} how
 * @returns {Field}
 */
export function choice(label, list, options, how = {}) {
  const name = freshId();
  const wrong = h('p.wrong');
  const inputs = options.map(o => h('input', { type: 'radio', name, value: o, checked: how.value === o, onchange: () => { say(null); how.onpick?.(o); } }));
  const node = h('fieldset.keys', null, h('legend', null, label),
    options.map((o, i) => h('label.key', null, inputs[i], h('span', null, how.words ? how.words(o) : w(list, o)))), wrong);
  const say = sayer(node, wrong);
  const get = () => inputs.find(i => i.checked)?.value ?? null;
  return {
    node, get, say,
    set: value => { for (const i of inputs) i.checked = i.value === value; },
    read: () => get() === null && !how.optional ? { value: null, wrong: t('dock-form.choose') } : { value: get() },
  };
}

/** Any of a few words. @param {string} label @param {string} list @param {string[]} options @param {string[]=} value @returns {Field} */
export function ticks(label, list, options, value = []) {
  const inputs = options.map(o => h('input', { type: 'checkbox', value: o, checked: value.includes(o) }));
  const node = h('fieldset.keys', null, h('legend', null, label), options.map((o, i) => h('label.key', null, inputs[i], h('span', null, w(list, o)))));
  const get = () => inputs.filter(i => i.checked).map(i => i.value);
  return { node, get, say: () => {}, set: v => { for (const i of inputs) i.checked = (v ?? []).includes(i.value); }, read: () => ({ value: get() }) };
}

/** Yes or not said. @param {any} label @param {boolean=} value @returns {Field & { input: any }} */
export function tick(label, value = false) {
  const input = h('input', { type: 'checkbox', checked: value });
  return { node: h('label.tick', null, input, h('span', null, label)), input, get: () => input.checked, say: () => {}, set: v => { input.checked = !!v; }, read: () => ({ value: input.checked }) };
}

/**
 * A number.
 * @param {string} label
 * @param {{ unit?: string, value?: number | null, hint?: any, least?: number, most?: number, needed?: boolean, whole?: boolean, oninput?: () => void }=} how
 * @returns {Field & { input: any }}
 */
export function numberField(label, how = {}) {
  const id = freshId();
  const wrong = h('p.wrong');
  const input = h('input', { id, type: 'text', inputmode: how.least !== undefined && how.least < 0 ? 'text' : how.whole ? 'numeric' : 'decimal', autocomplete: 'off', value: how.value === null || how.value === undefined ? '' : String(how.value), oninput: () => { say(null); how.oninput?.(); }, onchange: () => { if (input.value.trim() !== '') say(read().wrong ?? null); } });
  const node = h('div.field', null, h('label', { for: id }, label, how.unit ? h('span.quiet', null, ` [${how.unit}]`) : null), input, how.hint ? h('p.quiet.small', null, how.hint) : null, wrong);
  const say = sayer(input, wrong);
  const read = () => {
    const value = readNumber(input.value);
    if (value === null) return how.needed ? { value, wrong: t('dock-form.needed') } : { value };
    if (mayBeThousands(input.value)) return { value, wrong: t('dock-form.not_clear', { one: input.value.trim().replace(',', ''), other: input.value.trim().replace(',', '.') }) };
    if (Number.isNaN(value)) return { value, wrong: t('dock-form.no_number') };
    if (how.whole && !Number.isInteger(value)) return { value, wrong: t('dock-form.no_whole') };
    if ((how.least !== undefined && value < how.least) || (how.most !== undefined && value > how.most)) return { value, wrong: t('dock-form.outside', { least: how.least ?? '', most: how.most ?? '', unit: how.unit ?? '' }) };
    return { value };
  };
  return { node, input, say, read, get: () => input.value, set: v => { input.value = v ?? ''; } };
}

/** @param {string} label @param {{ value?: string, hint?: any, type?: string, needed?: boolean, long?: boolean, most?: number, attributes?: Record<string, any>, pattern?: RegExp, wrong?: string }=} how @returns {Field & { input: any }} */
export function textField(label, how = {}) {
  const id = freshId();
  const wrong = h('p.wrong');
  const input = h(how.long ? 'textarea' : 'input', { id, ...(how.long ? { rows: 3 } : { type: how.type ?? 'text' }), autocomplete: 'off', maxlength: how.most, value: how.value ?? '', ...how.attributes, oninput: () => say(null) });
  const node = h('div.field', null, h('label', { for: id }, label), input, how.hint ? h('p.quiet.small', null, how.hint) : null, wrong);
  const say = sayer(input, wrong);
  return {
    node, input, say, get: () => input.value, set: v => { input.value = v ?? ''; },
    read: () => {
      const value = input.value.trim();
      if (value === '') return how.needed ? { value: null, wrong: t('dock-form.needed') } : { value: null };
      return how.pattern && !how.pattern.test(value) ? { value, wrong: how.wrong ?? t('dock-form.no_id') } : { value };
    },
  };
}

/** An id as records take one. */
export const ID = /^[a-z0-9][a-z0-9._-]{0,62}$/i;

/** One of a longer list. @param {string} label @param {{ value: string, words: string }[]} options @param {{ value?: string | null, none?: string, onchange?: () => void, hint?: any }=} how @returns {Field & { input: any }} */
export function pick(label, options, how = {}) {
  const id = freshId();
  const wrong = h('p.wrong');
  const input = h('select', { id, onchange: () => { say(null); how.onchange?.(); } }, how.none !== undefined ? h('option', { value: '' }, how.none) : null, options.map(o => h('option', { value: o.value, selected: o.value === how.value }, o.words)));
  const say = sayer(input, wrong);
  return { node: h('div.field', null, h('label', { for: id }, label), input, how.hint ? h('p.quiet.small', null, how.hint) : null, wrong), input, get: () => input.value, say, set: v => { input.value = v ?? ''; }, read: () => ({ value: input.value || null }) };
}

/** Records of longer ago are told at the office; a year that is typed wrong is seen here [ms]. */
const LONG_AGO = 2 * 366 * 86_400_000;

/** When it happened: now, unless somebody says that it was earlier. @param {string} zone @param {Date | null=} at @param {string=} words @returns {Field} */
export function when(zone, at, words) {
  const id = freshId();
  const wrong = h('p.wrong');
  const input = h('input', { id, type: 'datetime-local', value: at ? inputIn(zone, at) : '', max: inputIn(zone, new Date(rightNow())), oninput: () => say(null) });
  const node = h('details.when', { open: !!at }, h('summary', null, words ?? t('dock-form.earlier')), h('div.field', null, h('label', { for: id }, t('dock-form.when')), input, h('p.quiet.small', null, t('dock-form.when_what', { zone })), wrong));
  const say = sayer(input, wrong);
  return {
    node, say, get: () => input.value, set: v => { input.value = v ?? ''; if (v) node.open = true; },
    read: () => {
      if (!input.value) return { value: null };
      const value = instantIn(zone, input.value);
      // By the right clock, like the watch that it was read from; not by the phone's.
      return value.getTime() > rightNow() + 60_000 ? { value, wrong: t('dock-form.in_future') } : !at && value.getTime() < rightNow() - LONG_AGO ? { value, wrong: t('dock-form.long_ago') } : { value };
    },
  };
}
