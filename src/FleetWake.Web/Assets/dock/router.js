// Which page stands at which address. Pages are fetched when they are first wanted and kept with the app.

import { fill, h } from './dom.js';
import { changed, state } from './state.js';
import { t } from './texts.js';

/**
 * @typedef {{ title: string, body: any, trail?: any, leave?: () => void, focus?: Element | null }} Page
 * @typedef {{ needs?: 'device' | 'person', load: () => Promise<{ show: (...args: any[]) => Promise<Page | string> }>, at: RegExp }} Route `show` may answer with a path to go to
 */

/** @param {RegExp} at @param {string} name @param {Route['needs']=} needs @returns {Route} */
const page = (at, name, needs) => ({ at, needs, load: () => import(`./pages/${name}.js`) });

/** @type {Route[]} */
const ROUTES = [
  page(/^\/dock\/?$/, 'boats', 'device'),
  page(/^\/dock\/b\/([^/]+)$/, 'card', 'device'),
  page(/^\/dock\/b\/([^/]+)\/(strike|mounting|take-off|found|inspection|look|retorque|hours|trial|work|hire|duty)$/, 'acts', 'person'),
  page(/^\/dock\/(e|p)\/([^/]+)$/, 'tag', 'device'),
  page(/^\/dock\/entry\/([^/]+)$/, 'entry', 'device'),
  page(/^\/dock\/entry\/([^/]+)\/change$/, 'amend', 'person'),
  page(/^\/dock\/outbox$/, 'outbox'),
  page(/^\/dock\/who$/, 'who', 'device'),
  page(/^\/dock\/phone$/, 'phone'),
  page(/^\/dock\/enrol$/, 'enrol'),
];

/** @type {Page | null} */
let current = null;
let turn = 0;

/** The turn of a page that somebody asked for and that is not drawn yet; 0 when there is none. */
let wanted = 0;

/** The page's own element. */
const main = () => /** @type {HTMLElement} */ (document.getElementById('page'));

/** Goes to an address of the app. @param {string} path @param {{ replace?: boolean }=} how */
export function go(path, how) {
  history[how?.replace ? 'replaceState' : 'pushState'](null, '', path);
  return draw();
}

/** Draws what stands at the present address. @param {{ quietly?: boolean }=} how `quietly`: somebody is reading it; it stays where it was */
export async function draw(how) {
  // A look at what changed must not take the place of where somebody goes.
  if (how?.quietly && wanted) return;
  const mine = ++turn;
  if (!how?.quietly) wanted = mine;
  const route = ROUTES.find(r => r.at.test(location.pathname));
  if (route?.needs && !state.device) return go('/dock/enrol', { replace: true });
  if (route?.needs === 'person' && !state.person) return go('/dock/who?to=' + encodeURIComponent(location.pathname + location.search), { replace: true });
  const found = route?.at.exec(location.pathname);
  const args = (found ?? []).slice(1).map(decodeURIComponent);
  /** @type {Page | string} */
  let next;
  try {
    next = route ? await (await route.load()).show(...args) : { title: t('dock.nothing_here'), body: h('p', null, t('dock.nothing_here_what')) };
  } catch (error) {
    console.error(error);
    next = { title: t('dock.broken'), body: [h('p', null, t('dock.broken_what')), h('p.quiet.small', null, String(error))] };
  }
  if (mine !== turn) return;
  wanted = 0;
  if (typeof next === 'string') return go(next, { replace: true });
  if (how?.quietly && main().querySelector('[data-typed], input:focus, textarea:focus')) {
    // Somebody began to type, perhaps while this was made: nobody's words are drawn over, nor the button that keeps them.
    next.leave?.();
    return;
  }

  const [top, open] = how?.quietly ? [window.scrollY, [...main().querySelectorAll('details')].map(d => d.open)] : [0, []];
  current?.leave?.();
  current = next;
  document.title = next.title + ' · ' + t('dock.app');
  document.body.dataset.drawn = location.pathname;
  const heading = h('h1', { tabindex: '-1' }, next.title);
  fill(main(), next.trail, heading, next.body);
  main().querySelectorAll('details').forEach((d, i) => { if (i in open) d.open = open[i]; });
  window.scrollTo(0, top);
  changed();
  if (how?.quietly) return;
  // Whoever listens to the page hears where they are now.
  (next.focus instanceof HTMLElement ? next.focus : heading).focus({ preventScroll: true });
}

/** Follows links within the app without a load. */
export function startRouter() {
  addEventListener('popstate', () => draw());
  main().addEventListener('input', event => { if (event.target instanceof HTMLElement) event.target.dataset.typed = ''; });
  document.addEventListener('click', event => {
    const target = event.target instanceof Element ? event.target.closest('a[href]') : null;
    if (!(target instanceof HTMLAnchorElement) || event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || target.download) return;
    const url = new URL(target.href);
    if (url.origin !== location.origin || !(url.pathname === '/dock' || url.pathname.startsWith('/dock/'))) return;
    event.preventDefault();
    go(url.pathname + url.search + url.hash);
  });
  return draw();
}

let telling = 0;

/** Tells something in passing. @param {string} words */
export function tell(words) {
  const told = /** @type {HTMLElement} */ (document.getElementById('told'));
  fill(told, h('p', null, words));
  clearTimeout(telling);
  telling = setTimeout(() => fill(told), 6000);
}
