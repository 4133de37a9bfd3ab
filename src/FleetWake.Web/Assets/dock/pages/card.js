// One boat on one page: may it go, what is fitted, what is due, and a key for each thing that can be recorded.

import { begin, h, line, link, sentence, state as word } from '../dom.js';
import { hireOf, ownOf } from '../hire.js';
import { state } from '../state.js';
import { t, number, w } from '../texts.js';
import { ago, day } from '../time.js';
import { cardOf, isStale } from '../today.js';
import { bandWords, fitsOf, placeOf, propWords, torqueWords } from '../words.js';

export async function show(/** @type {string} */ boat) {
  const found = await cardOf(boat);
  if (!found) return { title: boat, body: h('p.note', null, t(state.online ? 'dock-card.unknown' : 'dock-card.not_here', { boat })) };
  const { card, madeAt } = found;
  const own = await ownOf(card, madeAt);
  const hire = hireOf(card, madeAt, own);
  return {
    title: card.name,
    body: [
      h('section.hire.' + hire.kind, { 'aria-label': t('dock-card.hire') }, word(hire.kind, hire.words),
        hire.word === 'in_hire' && card.hire?.liftedOn ? h('p', null, h('strong', null, t('dock-card.lifted', { day: day(card.hire.liftedOn) }))) : null,
        hire.word === 'ask' ? h('p', null, t(hire.why === 'behind' ? 'dock-card.ask_behind' : 'dock-card.ask_what')) : null,
        hire.reasons.map((/** @type {any} */ r) => h('p', null, r.sentence, r.releasedBy ? h('span.release', null, t('dock-card.released_by', { what: r.releasedBy })) : null))),
      h('p.age' + (isStale(madeAt) ? '.wrong' : '.quiet'), null, t('dock.as_of', { ago: ago(Date.parse(madeAt), Date.now() + state.skew) })),
      keys(boat),
      card.positions.map((/** @type {any} */ p) => position(card, p, own)),
      due(boat, card),
      own.length > 0 ? h('section.sheet', null, h('h2', null, t('dock-card.own')), h('ul.plain', null, own.map(e => h('li', null, link('/dock/entry/' + e.id, w('kind', e.kind), e.position && e.position !== 'single' ? `, ${w('position', e.position)}` : ''), ' ', h('span.quiet.small', null, t(e.fate === 'waiting' ? 'dock-card.waits' : e.fate === 'sent' || e.fate === 'held' ? 'dock-card.new' : 'dock-card.trouble')))))) : null,
      (card.attention ?? []).length > 0 ? h('section.sheet', null, h('h2', null, t('dock-card.attention')), h('ul', null, card.attention.map((/** @type {any} */ a) => h('li', null, a.sentence ?? a)))) : null,
    ],
  };
}

/** @param {string} boat */
function keys(boat) {
  const key = (/** @type {string} */ act, /** @type {string} */ kind = 'plain') => h('a.button.' + kind, { href: `/dock/b/${encodeURIComponent(boat)}/${act}` }, t('dock-card.do_' + act.replace('-', '_')));
  return h('nav.acts', { 'aria-label': t('dock-card.record') }, key('strike', 'stop'), key('look'), key('inspection'), key('mounting'), key('retorque'), key('trial'), key('hours'), key('work'), key('hire'));
}

/** @param {any} card @param {any} p @param {import('../outbox.js').Kept[]} own */
function position(card, p, own) {
  const mine = own.filter(e => e.position === p.position || (e.kind === 'hours_read' && e.record.engine === p.engine?.engine));
  const last = (/** @type {string[]} */ kinds) => mine.filter(e => kinds.includes(e.kind)).at(-1);
  const change = last(['prop_mounted', 'prop_removed', 'found_fitted']);
  const hours = last(['hours_read'])?.record.hours;
  const retorqued = last(['nut_retorqued', 'prop_mounted']);
  const here = (/** @type {any} */ words) => [words, ' ', h('span.quiet.small', null, t('dock-card.by_this_phone'))];
  const strikes = [...(p.openStrikes ?? []).map((/** @type {any} */ s) => ({ ...s, own: false })), ...mine.filter(e => e.kind === 'strike_reported').map(e => ({ on: e.happenedAt, object: e.record.object, severity: e.record.severity, own: true }))];
  return h('section.sheet', null,
    h('h2', null, p.position === 'single' ? t('dock-card.engine_and_prop') : begin(w('position', p.position)), p.engine ? h('span.quiet.small', null, ' ' + p.engine.model) : null),
    h('dl', null,
      line(t('dock-card.fitted'), change ? here(change.kind === 'prop_removed' ? t('dock-card.nothing_fitted') : change.record.prop ?? t('dock-card.unknown_prop')) : p.mounting ? [propWords(p.mounting), h('span.quiet.small', null, ` ${p.mounting.prop}${p.mounting.fittedOn ? ', ' + t('dock-card.since', { day: day(p.mounting.fittedOn) }) : ''}`)] : t('dock-card.nothing_fitted')),
      line(t('dock-card.band'), bandWords(p.engine?.ratedBand)),
      line(t('dock-card.torque'), torqueWords(p.engine)),
      line(t('dock-card.standing'), standing(p)),
      line(t('dock-card.hours'), hours !== undefined ? here(t('dock-card.h', { n: number(hours, 1) })) : p.hours ? [t('dock-card.h', { n: number(p.hours.value, 1) }), p.hours.on ? h('span.quiet.small', null, ` ${day(p.hours.on)}`) : null] : t('dock-card.not_read')),
      p.mounting?.retorqueDue && !retorqued && !change ? line(t('dock-card.retorque'), h('strong', null, t('dock-card.retorque_due', { day: day(p.mounting.retorqueDue) }))) : null,
      strikes.length > 0 ? line(t('dock-card.strikes'), strikes.map(s => h('p', null, t('dock-card.strike', { object: w('object', s.object), severity: w('severity', s.severity), day: day(s.on) }), s.own ? [' ', h('span.quiet.small', null, t('dock-card.by_this_phone'))] : null))) : null),
    fitsOf(p).length > 0 ? h('details', null, h('summary', null, t('dock-card.fits')), h('ul.plain', null, fitsOf(p).map((/** @type {any} */ f) => h('li', null, h('strong', null, f.prop), ` ${f.size ?? ''} `, h('span.quiet.small', null, placeOf(f), ' · ', w('fit', f.answer), f.why ? `: ${f.why}` : ''))))) : null);
}

/** @param {any} p */
function standing(p) {
  const s = p.standing;
  if (!s) return t('dock-card.no_trial');
  return [h('p', null, s.word ? h('strong', null, `${s.sign ?? ''} ${sentence(s.word)} `) : null, sentence(s.sentence)), [s.driftSentence, s.exitSentence].filter(Boolean).map(x => h('p.small.quiet', null, sentence(x)))];
}

/** @param {string} boat @param {any} card */
function due(boat, card) {
  const list = card.due ?? [];
  if (list.length === 0) return null;
  return h('section.sheet', null, h('h2', null, t('dock-card.due')), h('ul.plain', null, list.map((/** @type {any} */ d) => h('li.due', null,
    h('div', null, h('strong', null, d.what), d.position && d.position !== 'single' ? `, ${w('position', d.position)}` : '', h('p.small' + (d.overdue ? '.wrong' : '.quiet'), null, d.overdue ? t('dock-card.overdue', { day: day(d.due) }) : d.due ? t('dock-card.due_on', { day: day(d.due) }) : '', d.why ? ` ${d.why}` : '')),
    d.ruleId ? link(`/dock/b/${encodeURIComponent(boat)}/duty?rule=${encodeURIComponent(d.ruleId)}${d.position ? '&position=' + d.position : ''}`, t('dock-card.duty')) : null))));
}
