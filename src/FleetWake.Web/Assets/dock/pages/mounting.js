// The mounting sheet: what comes off, what goes on, and the steps in their order while it is done.

import { fill, h } from '../dom.js';
import { choice, ID, numberField, pick, textField, when } from '../fields.js';
import { fittedNow } from '../fitted.js';
import { form } from '../form.js';
import { oddHours, oddTorque } from '../odd.js';
import { ownOf } from '../hire.js';
import { partOf, positionField, positionOf } from '../position.js';
import { recorded } from '../record.js';
import { sheet } from '../sheet.js';
import { state } from '../state.js';
import { t } from '../texts.js';
import { fitsOf, placeOf } from '../words.js';
import { WHY } from './take-off.js';

const OTHER = ' other';

export async function act(/** @type {any} */ card, /** @type {{ madeAt: string }} */ found) {
  const own = await ownOf(card, found.madeAt);
  const query = new URLSearchParams(location.search);
  const position = positionField(card, query.get('position'), turn);
  const off = h('div');
  const why = choice(t('dock-mounting.why'), 'off_why', WHY, { optional: true });
  const spares = h('div');
  const tag = textField(t('dock-mounting.tag'), { pattern: ID, attributes: { autocapitalize: 'none' } });
  const hours = numberField(t('dock-form.hours'), { unit: 'h', least: 0, most: 100000, hint: t('dock-mounting.hours_what') });
  const earlier = when(state.device?.zone ?? 'UTC');
  const steps = sheet(() => earlier.get() !== '');
  const parts = (state.today?.parts ?? []).filter((/** @type {any} */ p) => ['cotter_pin', 'tab_washer', 'shear_pin', 'nut', 'thrust_washer', 'hub_kit'].includes(p.kind));
  const part = pick(t('dock-duty.part'), parts.map((/** @type {any} */ p) => ({ value: p.part, words: `${p.name ?? p.part}${p.atDock === undefined ? '' : ` (${p.atDock})`}` })), { none: t('dock-duty.no_part') });
  const rest = h('div');
  /** @type {any} */
  let which = pick(t('dock-mounting.prop'), []);
  let wanted = '';
  const prop = { node: spares, get: () => which.get(), set: (/** @type {any} */ v) => { wanted = v; which.set(v); other(); }, say: (/** @type {string | null} */ words) => which.say(words), read: () => which.read() };

  function other() { tag.node.hidden = which.get() !== OTHER; }

  function turn() {
    const here = partOf(card, position.get());
    const fitted = position.get() ? fittedNow(here, own) : null;
    // Which spares fit, and how the nut is held, depends on the engine.
    rest.hidden = !position.get();
    fill(off, fitted ? [h('p', null, t('dock-mounting.comes_off', { prop: fitted })), why.node] : null);
    const kept = which.get() || wanted;
    which = pick(t('dock-mounting.prop'), [
      ...(fitted ? [{ value: fitted, words: t('dock-mounting.same', { prop: fitted }) }] : []),
      ...fitsOf(here).map((/** @type {any} */ f) => ({ value: f.prop, words: `${f.prop} · ${f.size ?? ''} · ${placeOf(f)}` })),
      { value: OTHER, words: t('dock-mounting.other') },
    ], { none: t('dock-mounting.choose'), value: kept || null, onchange: other, hint: fitsOf(here).length === 0 ? t('dock-mounting.no_spare') : t('dock-mounting.spares_what') });
    fill(spares, which.node);
    other();
    steps.of(here.engine);
  }

  rest.append(off, spares, tag.node, steps.node);
  const body = await form({
    key: `mounting/${card.boat}`, fields: { position, why, prop, tag, hours, part, when: earlier },
    extra: { get: steps.get, set: v => { turn(); steps.set(v); other(); } },
    body: [
      h('p.caution', null, t('dock-form.caution_prop')), position.node, rest,
      h('div.row', null, h('a.button.plain', { href: `/dock/b/${encodeURIComponent(card.boat)}/take-off` }, t('dock-mounting.only_off')), h('a.button.plain', { href: `/dock/b/${encodeURIComponent(card.boat)}/found` }, t('dock-mounting.found'))),
      hours.node, parts.length > 0 ? part.node : null, earlier.node],
    check: v => {
      const fitted = fittedNow(partOf(card, positionOf(card, v.position)), own);
      /** @type {[import('../fields.js').Field, string][]} */
      const list = [];
      if (fitted && !v.why) list.push([why, t('dock-mounting.why_needed', { prop: fitted })]);
      if (!v.prop) list.push([/** @type {any} */ (prop), t('dock-mounting.which')]);
      if (v.prop === OTHER && !v.tag) list.push([tag, t('dock-form.needed')]);
      // The sheet marks its own fields; the first of them is where one is led.
      const wrong = steps.read().wrong;
      if (wrong) list.push([/** @type {any} */ ({ node: steps.node, say: () => {} }), wrong]);
      return list;
    },
    odd: v => { const part = partOf(card, positionOf(card, v.position)); return [oddTorque(part.engine, steps.read().value.torque ?? null), oddHours(part, v.hours)]; },
    record: async (v, draft) => {
      const at = positionOf(card, v.position);
      const fitted = fittedNow(partOf(card, at), own);
      const fits = v.prop === OTHER ? v.tag : v.prop;
      const sheetSays = steps.read();
      /** @type {{ kind: string, record: Record<string, any> }[]} */
      const records = fitted ? [{ kind: 'prop_removed', record: { boat: card.boat, position: at, why: v.why, prop: fitted, hours: v.hours } }] : [];
      records.push({ kind: 'prop_mounted', record: { boat: card.boat, position: at, prop: fits, hours: v.hours, ...sheetSays.value, parts: v.part ? [{ part: v.part, quantity: 1, dock: state.device?.dock }] : [] } });
      await recorded(card, records, { draft, at: v.when });
    },
  });
  earlier.node.addEventListener('input', steps.draw);
  turn();
  return { title: t('dock-mounting.title'), body };
}
