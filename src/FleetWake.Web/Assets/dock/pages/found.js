// A prop was found fitted that nobody wrote down.

import { h } from '../dom.js';
import { ID, numberField, textField, when } from '../fields.js';
import { form } from '../form.js';
import { positionField, positionOf } from '../position.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t } from '../texts.js';

export async function act(/** @type {any} */ card) {
  const position = positionField(card, new URLSearchParams(location.search).get('position'));
  const prop = textField(t('dock-mounting.tag'), { pattern: ID, hint: t('dock-found.tag_what'), attributes: { autocapitalize: 'none' } });
  const hours = numberField(t('dock-form.hours'), { unit: 'h', least: 0, most: 100000 });
  const earlier = when(state.device?.zone ?? 'UTC');
  const body = await form({
    key: `found/${card.boat}`, fields: { position, prop, hours, when: earlier },
    body: [h('p.caution', null, t('dock-form.caution')), position.node, prop.node, hours.node, earlier.node],
    record: async (v, draft) => recorded(card, [{ kind: 'found_fitted', record: { boat: card.boat, position: positionOf(card, v.position), prop: v.prop, hours: v.hours } }], { draft, at: v.when }),
  });
  return { title: t('dock-found.title'), body };
}
