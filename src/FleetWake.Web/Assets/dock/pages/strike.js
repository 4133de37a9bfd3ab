// A strike in three taps: what, how hard, where. Photo and words come after it is safe on the phone.

import { fill, h } from '../dom.js';
import { when } from '../fields.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';

const OBJECTS = ['rock', 'sand', 'wood', 'line', 'structure', 'unknown'];
const SEVERITIES = ['no_mark', 'scuffed', 'chipped', 'bent', 'broken'];

export async function act(/** @type {any} */ card) {
  const place = h('div', { 'aria-live': 'polite' });
  const failed = h('p.wrong', { role: 'alert' });
  const earlier = when(state.device?.zone ?? 'UTC', null, t('dock-strike.earlier'));
  /** @type {Record<string, string>} */
  const strike = { boat: card.boat };

  /** @param {string} question @param {string} list @param {string[]} options @param {(o: string) => void} then @param {(() => void)=} back */
  const step = (question, list, options, then, back) => {
    const heading = h('h2', { tabindex: '-1' }, question);
    const keys = options.map(o => h('button.plain', { type: 'button', onclick: () => then(o) }, h('strong', null, w(list, o)), hint(list, o)));
    fill(place, heading, h('div.choose.large', null, keys), back ? h('p', null, h('button.plain', { type: 'button', onclick: back }, t('dock-strike.back'))) : null);
    // The second tap of a double one would answer a question that nobody has read.
    if (list !== 'object') { for (const k of keys) k.disabled = true; setTimeout(() => { for (const k of keys) k.disabled = false; }, 300); }
    if (list !== 'object') heading.focus();
  };
  const what = () => step(t('dock-strike.what'), 'object', OBJECTS, o => { strike.object = o; hard(); });
  const hard = () => step(t('dock-strike.hard'), 'severity', SEVERITIES, o => { strike.severity = o; where(); }, what);
  const where = () => card.positions.length === 1 ? save(card.positions[0].position) : step(t('dock-strike.where'), 'position', card.positions.map((/** @type {any} */ p) => p.position), save, hard);

  async function save(/** @type {string} */ position) {
    const { value, wrong } = earlier.read();
    earlier.say(wrong ?? null);
    if (wrong) return;
    const { boat, object, severity } = strike;
    try {
      await recorded(card, [{ kind: 'strike_reported', record: { boat, position, object, severity } }], { at: value });
    } catch (error) {
      console.error(error);
      fill(failed, t('dock-form.not_kept', { why: error instanceof Error ? error.message : String(error) }));
    }
  }

  what();
  return { title: t('dock-strike.title'), body: [h('p.caution', null, t('dock-strike.caution')), place, failed, earlier.node] };
}

/** @param {string} list @param {string} o */
const hint = (list, o) => list === 'severity' ? h('span.quiet.small', null, t('dock-strike.severity_' + o)) : null;
