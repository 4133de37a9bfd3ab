// Who holds the phone. It says who made an entry on a phone that several share; it is no strong lock.

import { ask, Offline, Problem } from '../api.js';
import * as db from '../db.js';
import { fill, h } from '../dom.js';
import { form } from '../form.js';
import { textField } from '../fields.js';
import { changeAll, entries, isChecked } from '../outbox.js';
import { go } from '../router.js';
import { send } from '../sending.js';
import { keep, state } from '../state.js';
import { t, count, w } from '../texts.js';
import { refresh } from '../today.js';

const PIN = /^\d{6}$/;

/** Entries that one PIN confirms beforehand: more than a day at the dock has. */
const AHEAD = 80;

export async function show() {
  const to = new URLSearchParams(location.search).get('to') ?? '/dock/';
  // Somebody may just have been given a PIN, or a code for one. Without signal the old list serves.
  if (state.online) await Promise.race([refresh(), new Promise(r => setTimeout(r, 1500))]);
  const people = () => state.today?.people ?? [];
  const place = h('div');
  const back = to.startsWith('/dock/') ? to : '/dock/';

  const list = () => fill(place,
    state.person ? h('p', null, t(isChecked() ? 'dock-who.now_checked' : 'dock-who.now_claimed', { name: state.person.name })) : null,
    people().length === 0 ? h('p.note', null, t('dock-who.nobody')) : null,
    h('div.choose', null, people().map((/** @type {any} */ p) => h('button.plain', { type: 'button', onclick: async () => fill(place, await pinOf(p)) }, h('strong', null, p.name), h('span.quiet.small', null, w('role', p.role))))),
    h('p.quiet.small', null, t('dock-who.what')));

  /** @param {any} person @param {boolean=} start by a start code of the office: a first PIN, or another in place of one that is forgotten */
  async function pinOf(person, start = !person.hasPin) {
    const mine = (await entries()).filter(e => e.claimed && e.by === person.person && e.fate !== 'withdrawn');
    let set = false;
    const pinInput = { most: 6, needed: true, type: 'password', pattern: PIN, wrong: t('dock-who.six'), attributes: { inputmode: 'numeric' } };
    /** @type {Record<string, import('../fields.js').Field>} */
    const fields = start
      ? { pin: textField(t('dock-who.start_code'), { needed: true, most: 20, hint: t(person.hasPin ? 'dock-who.start_code_again' : 'dock-who.start_code_what'), attributes: { inputmode: 'numeric', spellcheck: 'false' } }), newPin: textField(t('dock-who.new_pin'), pinInput), again: textField(t('dock-who.again'), pinInput) }
      : { pin: textField(t('dock-who.pin'), pinInput) };
    const node = await form({
      key: 'pin', draft: false, plain: true, fields, words: t('dock-who.go_on'),
      body: [h('h2', null, person.name), mine.length > 0 ? h('p.note', null, count('dock-who.confirms', mine.length)) : null, Object.values(fields).map(f => f.node)],
      check: v => start && v.newPin !== v.again ? [[fields.again, t('dock-who.not_same')]] : [],
      record: async values => {
        try {
          // A start code is good for one PIN: should the line break behind it, the PIN is set all the same.
          if (start && !set) { await ask('/pin', { json: { person: person.person, pin: values.pin.replace(/[\s-]/g, ''), newPin: values.newPin } }); set = person.hasPin = true; await keep('today', state.today); }
          // The PIN confirms what was entered in this name, and ids for what is entered until it is asked for again: so that
          // the phone need not keep it.
          const own = (await entries()).filter(e => e.claimed && e.by === person.person).map(e => e.id).slice(0, 900);
          const ids = Array.from({ length: AHEAD }, () => crypto.randomUUID());
          const { body } = await ask('/sign', { json: { person: person.person, pin: start ? values.newPin : values.pin, confirms: [...own, ...ids] } });
          await changeAll(own, kept => { kept.claimed = false; });
          await db.put('state', ids, 'ids');
          await keep('person', { person: person.person, name: person.name, until: Date.parse(body.until) });
          send();
        } catch (error) {
          if (error instanceof Offline) { await claim(person); return; }
          if (!(error instanceof Problem)) throw error;
          if (error.status !== 403) throw new Error(error.body.refusals?.[0]?.message ?? error.message);
          // Set elsewhere meanwhile, or taken away: then something else is asked for.
          await refresh();
          const now = people().find((/** @type {any} */ p) => p.person === person.person);
          if (now && now.hasPin !== person.hasPin && !set) { fill(place, h('p.note', null, t('dock-who.changed')), await pinOf(now)); return; }
          throw new Error(start && !set ? wrongCode(error.body) : wrongPin(error.body));
        }
        await go(back, { replace: true });
      },
    });
    return [node, state.online ? null : h('p.note', null, t('dock-who.offline')),
      h('p', null, h('button.plain', { type: 'button', onclick: () => claim(person) }, t(state.online ? 'dock-who.without' : 'dock-who.claim'))),
      start || !state.online ? null : h('p', null, h('button.plain', { type: 'button', onclick: async () => fill(place, await pinOf(person, true)) }, t('dock-who.replace'))),
      h('p', null, h('button.plain', { type: 'button', onclick: list }, t('dock-who.another')))];
  }

  /** @param {any} person */
  async function claim(person) {
    await db.remove('state', 'ids');
    await keep('person', { person: person.person, name: person.name, until: null });
    await go(back, { replace: true });
  }

  list();
  return { title: t('dock-who.title'), body: place };
}

/** @param {any} body */
const wrongCode = body => body.triesLeft > 0 ? count('dock-who.wrong_code', body.triesLeft) : body.triesLeft === 0 ? t('dock-who.locked') : body.detail ?? t('dock-who.locked');

/** @param {any} body */
function wrongPin(body) {
  const left = body.triesLeft ?? body.tries;
  return left > 0 ? count('dock-who.wrong', left) : left === 0 || !body.detail ? t('dock-who.locked') : body.detail;
}
