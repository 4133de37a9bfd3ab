// This phone: what it is to the office, how much room it has, and how it is given away.

import { wipePhone } from '../device.js';
import { h, line, fill } from '../dom.js';
import { fileKeys, saveFile } from '../file.js';
import { entries } from '../outbox.js';
import { room } from '../space.js';
import { state } from '../state.js';
import { count, number, t } from '../texts.js';
import { day } from '../time.js';

export async function show() {
  const { device } = state;
  if (!device) return { title: t('dock-phone.title'), body: [h('p', null, t('dock-phone.none')), h('a.button', { href: '/dock/enrol' }, t('dock-enrol.title')), (await entries()).length > 0 ? [h('section.sheet', null, fileKeys()), await wipe()] : null] };
  const space = await room();
  const persisted = await navigator.storage?.persisted?.().catch(() => false);
  const skew = Math.round(state.skew / 60_000);
  return {
    title: t('dock-phone.title'),
    body: [
      device.ended ? h('section.sheet.ended', null, h('h2', null, t('dock.ended_' + device.ended.replaceAll('-', '_'))), h('p', null, t('dock-phone.ended_' + device.ended.replaceAll('-', '_'))), fileKeys(), h('p', null, h('a.button', { href: '/dock/enrol' }, t('dock-enrol.again')))) : null,
      h('section.sheet', null, h('dl', null,
        line(t('dock-phone.dock'), `${device.dockName}, ${device.operatorName}`),
        line(t('dock-phone.token'), t('dock-phone.token_until', { day: day(device.tokenUntil) })),
        line(t('dock-phone.clock'), state.skewKnown ? Math.abs(skew) < 2 ? t('dock-phone.clock_right') : t(skew > 0 ? 'dock-phone.clock_slow' : 'dock-phone.clock_fast', { by: span(Math.abs(skew)) }) : t('dock-phone.clock_unknown')),
        line(t('dock-phone.room'), space ? t(space.full ? 'dock-phone.room_full' : 'dock-phone.room_free', { mb: number(space.free / 1e6) }) : t('dock-phone.room_unknown'), persisted ? '' : h('span.quiet.small', null, ' ' + t('dock-phone.not_persisted'))),
        line(t('dock-phone.version'), document.body.dataset.version))),
      await wipe(),
    ],
  };
}

/** @param {number} minutes */
const span = minutes => minutes < 120 ? count('dock-phone.minutes', minutes) : minutes < 72 * 60 ? count('dock-phone.hours', Math.round(minutes / 60)) : count('dock-phone.days', Math.round(minutes / 1440));

/** Wiping is refused while something is unsent, unless it is in a file first and somebody says so twice. */
async function wipe() {
  const unsent = (await entries()).filter(e => e.fate === 'waiting' || e.fate === 'refused' || e.fate === 'conflict').length;
  const words = [unsent > 0 ? count('dock-phone.wipe_unsent', unsent) : null, state.extras > 0 ? count('dock-phone.wipe_extras', state.extras) : null].filter(Boolean).join(' ');
  const place = h('div');
  const really = (/** @type {string=} */ held) => fill(place, held ? h('p', null, held) : null, h('p.note.stop', { role: 'alert' }, t('dock-phone.wipe_really')), h('div.row', null,
    h('button.stop', { type: 'button', onclick: async () => { await wipePhone(); location.replace('/dock/phone'); } }, t('dock-phone.wipe_yes')),
    h('button.plain', { type: 'button', onclick: first }, t('dock-form.no_back'))));
  const first = () => fill(place, words
    ? [h('p', null, words, ' ', t('dock-phone.wipe_first')), h('button.plain', { type: 'button', onclick: async () => { const held = await saveFile(); if (held !== null) really(held); } }, t('dock-phone.wipe_export'))]
    : h('button.stop', { type: 'button', onclick: () => really() }, t('dock-phone.wipe')));
  first();
  return h('section.sheet', null, h('h2', null, t('dock-phone.wipe')), h('p.quiet', null, t('dock-phone.wipe_what')), place);
}
