// The short look: two taps at the dock, or before and after a hire with its reference and a photo.

import { h } from '../dom.js';
import { choice, ID, textField, when } from '../fields.js';
import { form } from '../form.js';
import { photoInput } from '../photo-input.js';
import { positionField, positionOf } from '../position.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';

const NO_STRIKE = 'no_strike';

export async function act(/** @type {any} */ card) {
  const query = new URLSearchParams(location.search);
  /** @type {import('../photos.js').Taken[]} */
  const photos = [];
  const taken = h('p.quiet.small', { role: 'status' });
  const position = positionField(card, query.get('position'));
  const hire = textField(t('dock-look.hire'), { pattern: ID, wrong: t('dock-look.hire_wrong'), hint: t('dock-look.hire_what'), attributes: { autocapitalize: 'none' } });
  const strike = h('div.more');
  const object = choice(t('dock-strike.what'), 'object', ['rock', 'sand', 'wood', 'line', 'structure', 'unknown'], { value: 'unknown' });
  const severity = choice(t('dock-strike.hard'), 'severity', ['scuffed', 'chipped', 'bent', 'broken', NO_STRIKE], { optional: true, words: o => o === NO_STRIKE ? t('dock-look.no_strike') : w('severity', o) });
  const moment = choice(t('dock-look.moment'), 'moment', ['at_dock', 'before_hire', 'after_hire'], { value: 'at_dock', onpick: turn });
  const seen = choice(t('dock-look.seen'), 'look', ['nothing_new', 'mark', 'damage'], { onpick: turn });
  const earlier = when(state.device?.zone ?? 'UTC');
  const handover = h('div', null, hire.node, h('h2', null, t('dock-look.photo')), photoInput(list => { photos.push(...list); taken.textContent = t('dock-photo.taken', { n: photos.length }); }), taken);

  function turn() {
    const hired = moment.get() !== 'at_dock';
    handover.hidden = !hired;
    // A mark that a hire brought back is a strike, and the beginning of a claim.
    strike.hidden = !(moment.get() === 'after_hire' && (seen.get() === 'mark' || seen.get() === 'damage'));
  }

  const isFound = (/** @type {Record<string, any>} */ v) => !strike.hidden && v.severity && v.severity !== NO_STRIKE;
  strike.append(h('p.note', null, t('dock-look.claim')), object.node, severity.node);
  const body = await form({
    key: `look/${card.boat}`, fields: { position, moment, seen, hire, object, severity, when: earlier },
    extra: { get: () => null, set: turn },
    body: [h('p.caution', null, t('dock-form.caution')), moment.node, position.node, seen.node, handover, strike, earlier.node],
    check: v => {
      /** @type {[import('../fields.js').Field, string][]} */
      const list = [];
      if (!strike.hidden && !v.severity) list.push([severity, t('dock-form.choose')]);
      if (isFound(v) && !v.hire) list.push([hire, t('dock-look.hire_needed')]);
      return list;
    },
    record: async (v, draft) => {
      const at = positionOf(card, v.position);
      const hired = v.moment !== 'at_dock';
      const found = isFound(v);
      /** @type {{ kind: string, record: Record<string, any> }[]} */
      const records = [{ kind: 'looked_over', record: { boat: card.boat, position: at, moment: v.moment, seen: v.seen, hire: hired ? v.hire : null, photo: photos[0]?.original } }];
      if (found) records.push({ kind: 'strike_reported', record: { boat: card.boat, position: at, object: v.object ?? 'unknown', severity: v.severity } }, { kind: 'claim_opened', record: { boat: card.boat, position: at, hire: v.hire } });
      await recorded(card, records, { draft, at: v.when, photos, links: found ? [{ from: 2, field: 'strike', to: 1 }] : [] });
    },
  });
  turn();
  return { title: t('dock-look.title'), body };
}
