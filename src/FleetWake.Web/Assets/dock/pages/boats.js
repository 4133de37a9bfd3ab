// Today's list: every boat of the dock, whoever needs care first; found by two letters, by its tag, or by looking.

import { fill, h, link, state as word } from '../dom.js';
import { hireOf, mostUrgentFirst, ownOfAll } from '../hire.js';
import { canScan, scan } from '../scan.js';
import { go } from '../router.js';
import { state } from '../state.js';
import { t, count } from '../texts.js';
import { ago } from '../time.js';
import { isStale, refresh } from '../today.js';

let typed = '';

export async function show() {
  if (!state.today) await refresh();
  const today = state.today;
  if (!today) return { title: t('dock-boats.title'), body: h('p.note', null, t(state.device?.ended ? 'dock-boats.none_ended' : 'dock-boats.none')) };

  const own = await ownOfAll(today.boats, today.madeAt);
  const hire = new Map(today.boats.map((/** @type {any} */ b) => [b.boat, hireOf(b, today.madeAt, own.get(b.boat) ?? [])]));
  const words = new Map([...hire].map(([boat, s]) => [boat, s.word]));
  const list = h('ul.boats');
  const others = h('ul.boats.others');
  const heading = h('p.quiet.small', { role: 'status' });

  const draw = () => {
    const q = typed.trim().toLowerCase();
    const fits = (/** @type {any} */ b) => q === '' || b.name.toLowerCase().split(/\s+/).some((/** @type {string} */ p) => p.startsWith(q)) || b.name.toLowerCase().startsWith(q) || b.boat.startsWith(q);
    const shown = mostUrgentFirst(today.boats, words).filter(fits);
    fill(list, shown.map((/** @type {any} */ b) => item(b, hire.get(b.boat))));
    const elsewhere = q.length < 2 ? [] : (today.others ?? []).filter(fits);
    fill(others, elsewhere.map((/** @type {any} */ b) => h('li', null, link('/dock/b/' + encodeURIComponent(b.boat), h('strong', null, b.name), h('span.quiet.small', null, b.dock ? t('dock-boats.elsewhere', { dock: b.dock }) : t('dock-boats.not_registered'))))));
    fill(heading, q === '' ? summary([...words.values()]) : shown.length + elsewhere.length === 0 ? t('dock-boats.no_match') : count('dock-boats.match', shown.length + elsewhere.length));
  };

  const search = h('input', { id: 'find', type: 'search', value: typed, autocomplete: 'off', spellcheck: 'false', enterkeyhint: 'search', oninput: () => { typed = search.value; draw(); } });
  const find = h('form.find', { role: 'search', onsubmit: (/** @type {Event} */ e) => { e.preventDefault(); const first = list.querySelector('a') ?? others.querySelector('a'); if (typed && first) { typed = ''; go(first.getAttribute('href')); } } },
    h('label', { for: 'find' }, t('dock-boats.find')), h('div.row', null, search, await canScan() ? h('button.plain', { type: 'button', onclick: () => scan(find) }, t('dock-boats.scan')) : null));
  draw();
  return {
    title: t('dock-boats.title'),
    body: [find, isStale() ? h('p.note', null, t('dock-boats.stale')) : null, heading, list, others,
      h('p.quiet.small', null, t('dock.as_of', { ago: ago(Date.parse(today.madeAt), Date.now() + state.skew) }))],
  };
}

/** @param {string[]} words */
function summary(words) {
  const n = (/** @type {string} */ word) => words.filter(w => w === word).length;
  return [count('dock-boats.out', n('out')), count('dock-boats.look', n('look_first')), n('ask') > 0 ? count('dock-boats.ask', n('ask')) : count('dock-boats.in', n('in_hire'))].join(' · ');
}

/** @param {any} b @param {ReturnType<typeof hireOf>} hire */
function item(b, hire) {
  const why = hire.reasons[0]?.sentence ?? b.attention?.[0]?.sentence ?? b.attention?.[0] ?? dueWords(b.due ?? []);
  return h('li', null, link('/dock/b/' + encodeURIComponent(b.boat), h('strong', null, b.name), word(hire.kind, hire.words), why ? h('span.quiet.small', null, why) : null));
}

/** @param {any[]} due */
function dueWords(due) {
  const late = due.filter(d => d.overdue);
  return late.length > 0 ? t('dock-boats.overdue', { what: late[0].what }) : due.length > 0 ? t('dock-boats.due', { what: due[0].what }) : null;
}
