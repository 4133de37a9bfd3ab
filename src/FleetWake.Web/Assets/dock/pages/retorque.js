// The nut tightened again, after the first outing or when it is due: with a new pin, and by the manual's torque.

import { h } from '../dom.js';
import { numberField, tick, when } from '../fields.js';
import { form } from '../form.js';
import { oddHours, oddTorque } from '../odd.js';
import { partOf, positionField, positionOf } from '../position.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';
import { fasteningOf, nutHelp, torqueField } from '../nut.js';

export async function act(/** @type {any} */ card) {
  const query = new URLSearchParams(location.search);
  const place = h('div');
  const position = positionField(card, query.get('position'), turn);
  const hours = numberField(t('dock-form.hours'), { unit: 'h', least: 0, most: 100000 });
  const earlier = when(state.device?.zone ?? 'UTC');
  /** @type {any} */
  let torque;
  /** @type {any} */
  let pin;

  function turn() {
    const part = partOf(card, position.get());
    const kept = [torque?.get(), pin?.get()];
    place.hidden = !position.get();
    torque = torqueField(part.engine);
    pin = tick(t('dock-retorque.new_pin_' + fasteningOf(part.engine)));
    torque.set(kept[0]);
    pin.set(kept[1]);
    place.replaceChildren(torque.node, ...[nutHelp(part.engine)].filter(Boolean), pin.node);
  }

  turn();
  const proxy = (/** @type {() => any} */ of) => ({ node: place, get: () => of().get(), set: (/** @type {any} */ v) => of().set(v), read: () => of().read(), say: (/** @type {any} */ s) => of().say(s) });
  const body = await form({
    key: `retorque/${card.boat}`, fields: { position, torque: proxy(() => torque), pin: proxy(() => pin), hours, when: earlier }, extra: { get: () => null, set: turn },
    body: [h('p.caution', null, t('dock-form.caution_prop')), position.node, place, hours.node, earlier.node],
    check: v => v.torque === null && !v.pin ? [[proxy(() => torque), t('dock-retorque.empty')]] : [],
    odd: v => { const part = partOf(card, positionOf(card, v.position)); return [oddTorque(part.engine, v.torque), oddHours(part, v.hours)]; },
    record: async (v, draft) => recorded(card, [{ kind: 'nut_retorqued', record: { boat: card.boat, position: positionOf(card, v.position), torque: v.torque, torqueUnit: v.torque === null ? null : torque.unit, newPin: v.pin || null, hours: v.hours } }], { draft, at: v.when }),
  });
  return { title: t('dock-retorque.title'), body };
}
