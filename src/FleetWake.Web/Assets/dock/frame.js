// What stands around every page: where one is, who one is, what is not sent.

import { fill, h, link, shape } from './dom.js';
import { listen, state } from './state.js';
import { t, count } from './texts.js';

/** Draws it, and again whenever something changes. */
export function startFrame() {
  drawFrame();
  listen(drawFrame);
  addEventListener('popstate', drawFrame);
}

/** Draws it. */
export function drawFrame() {
  const { device, person } = state;
  fill(/** @type {Element} */ (document.getElementById('bar')),
    device ? link('/dock/', h('strong', null, device.dockName), h('span.quiet.small', null, device.operatorName)) : h('strong', null, t('dock.app')),
    device && (person ? h('a.who', { href: '/dock/who' }, person.name) : h('a.who', { href: '/dock/who' }, t('dock.who_are_you'))),
    notices());
  const unsent = state.waiting + state.trouble;
  const words = unsent > 0 ? count('dock.not_sent', unsent) : state.extras > 0 ? count('dock.extras', state.extras) : t('dock.all_sent');
  fill(/** @type {Element} */ (document.getElementById('places')), device && [
    place('/dock/', 'boats', t('dock.boats')),
    place('/dock/outbox', state.trouble > 0 ? 'trouble' : unsent + state.extras > 0 ? 'outbox' : 'sent', words),
    place('/dock/phone', 'phone', t('dock.this_phone')),
  ]);
}

/** @param {string} path @param {Parameters<typeof shape>[0]} drawing @param {string} words */
function place(path, drawing, words) {
  const here = path === '/dock/' ? location.pathname === path || location.pathname === '/dock' || location.pathname.startsWith('/dock/b/') : location.pathname === path;
  return h('a', { href: path, 'aria-current': here ? 'page' : null }, shape(drawing), words);
}

function notices() {
  const { device } = state;
  const list = [];
  if (device?.ended) list.push(h('a.notice.stop', { href: '/dock/phone' }, t('dock.ended_' + device.ended.replaceAll('-', '_'))));
  else if (!state.online) list.push(h('span.notice', null, t('dock.offline')));
  if (state.online && state.unconfirmed > 0 && !device?.ended) list.push(h('a.notice', { href: '/dock/who' }, count('dock.confirm', state.unconfirmed)));
  if (state.update) list.push(h('button.notice.plain', { onclick: () => state.update?.postMessage('take-over') }, t('dock.update')));
  return list;
}
