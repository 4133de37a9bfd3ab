// A form: its fields, what was typed so far (kept on the phone, so that a call or an empty battery costs nothing), and one
// key to record it.

import * as db from './db.js';
import { fill, h, sentence } from './dom.js';
import { CHEAP, makeRoom } from './space.js';
import { t } from './texts.js';

/**
 * @param {{ key: string, fields: Record<string, import('./fields.js').Field>, body: any, record: (values: Record<string, any>, draft: string) => Promise<void>, words?: string, extra?: { get: () => any, set: (v: any) => void }, draft?: boolean, plain?: boolean,
 *   check?: (values: Record<string, any>) => [import('./fields.js').Field, string][], odd?: (values: Record<string, any>) => (string | null)[] }} what
 *   `check`: more that must be mended, as [field, words]; `odd`: questions about what is hardly so, answered by "yes, as read"; `plain`: what went wrong is said by itself
 *   `draft`: false where what is typed must not stay on the phone; `record` is given the draft's key, to throw it away with what it keeps
 * @returns {Promise<any>}
 */
export async function form(what) {
  const { key, fields, extra } = what;
  const button = h('button.record', { type: 'submit' }, what.words ?? t('dock-form.record'));
  const wrong = h('p.wrong', { role: 'alert' });
  const asks = h('div', { 'aria-live': 'polite' });
  const node = h('form', { novalidate: true, onsubmit: submit, oninput: keepDraft, onchange: keepDraft }, what.body, wrong, asks, button);

  const kept = what.draft !== false;
  const draft = kept ? await db.get('drafts', key).catch(() => null) : null;
  if (draft) {
    for (const [name, value] of Object.entries(draft.values)) fields[name]?.set(value);
    if (draft.extra !== undefined) extra?.set(draft.extra);
    node.prepend(h('p.note.draft', null, t('dock-form.draft'), ' ', h('button.plain', { type: 'button', onclick: forget }, t('dock-form.draft_forget'))));
  }

  let timer = 0;
  let over = false;
  function keepDraft() {
    clearTimeout(timer);
    if (kept) timer = setTimeout(saveDraft, 250);
  }

  async function saveDraft() {
    if (over || !kept) return;
    const values = Object.fromEntries(Object.entries(fields).map(([name, f]) => [name, f.get()]));
    // A draft is worth less than a photo that nobody has yet.
    await makeRoom(() => db.put('drafts', { at: Date.now(), values, extra: extra?.get() }, key), CHEAP).catch(() => {});
  }

  async function forget() {
    over = true;
    clearTimeout(timer);
    await db.remove('drafts', key);
    dispatchEvent(new PopStateEvent('popstate'));
  }

  let sure = '';

  /** @param {Event=} event */
  async function submit(event) {
    event?.preventDefault();
    if (button.disabled) return;
    /** @type {Record<string, any>} */
    const values = {};
    let first = null;
    for (const [name, field] of Object.entries(fields)) {
      const read = field.read();
      field.say(read.wrong ?? null);
      if (read.wrong) first ??= field;
      values[name] = read.value;
    }
    for (const [field, words] of what.check?.(values) ?? []) { field.say(words); first ??= field; }
    fill(asks);
    if (first) {
      first.node.scrollIntoView({ block: 'center' });
      (first.node.matches?.('input') ? first.node : first.node.querySelector('[aria-invalid="true"]:is(input, select, textarea)') ?? first.node.querySelector('input, select, textarea'))?.focus({ preventScroll: true });
      return;
    }

    // What is hardly so may be so: somebody looks twice, and it is taken as read.
    const odd = (what.odd?.(values) ?? []).filter(q => q !== null);
    if (odd.length > 0 && odd.join() !== sure) {
      const yes = h('button.plain', { type: 'button', onclick: () => { sure = odd.join(); submit(); } }, t('dock-form.as_read'));
      fill(asks, h('div.note', null, odd.map(q => h('p', null, q)), yes));
      yes.scrollIntoView({ block: 'center' });
      yes.focus({ preventScroll: true });
      return;
    }

    button.disabled = true;
    wrong.textContent = '';
    try {
      over = true;
      clearTimeout(timer);
      await what.record(values, key);
    } catch (error) {
      over = false;
      console.error(error);
      await saveDraft();
      const why = error instanceof Error ? error.message : String(error);
      wrong.textContent = what.plain ? sentence(why) : t('dock-form.not_kept', { why: sentence(why) });
    } finally {
      button.disabled = false;
    }
  }

  node.changed = keepDraft;
  return node;
}
