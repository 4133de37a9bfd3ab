// The app begins: what the phone keeps first, so that a page stands before the office has answered.

import { renew } from './device.js';
import { startFrame, drawFrame } from './frame.js';
import { wake } from './outbox.js';
import { draw, startRouter } from './router.js';
import { send } from './sending.js';
import { changed, listen, loadState, state } from './state.js';
import { loadTexts } from './texts.js';
import { isBehind, isStale, refresh } from './today.js';

await Promise.all([loadTexts(), loadState()]);
const asked = state.device && !state.device.ended ? refresh() : Promise.resolve();
await wake().catch(console.error);
startFrame();
const first = known();
await startRouter();
drawFrame();
asked.then(() => catchUp(false, first));
if ('serviceWorker' in navigator && isSecureContext) keepApp();

/** Renews the token, sends, asks for the list: whenever the phone comes back to life. @param {boolean} ask @param {string} before what was known when the page was drawn */
async function catchUp(ask = true, before = known()) {
  if (!state.device) return;
  await renew();
  await send();
  if (ask) await refresh();
  if (isBehind()) { clearTimeout(soon); soon = setTimeout(() => { if (document.visibilityState === 'visible') catchUp(); }, wait = Math.min(60_000, 2 * wait)); } else wait = 1_500;
  // A list or a card shows what has just come in; a form must not be drawn anew under somebody's hands.
  if (before !== known() && /^\/dock\/?$|^\/dock\/b\/[^/]+$|^\/dock\/outbox$/.test(location.pathname) && !document.activeElement?.matches('input, select, textarea')) await draw({ quietly: true });
}

// What was just sent is soon in the office's card.
let unsent = state.waiting;
let fresh = 0;
listen(() => {
  if (state.waiting < unsent) { clearTimeout(fresh); fresh = setTimeout(() => catchUp(true, ''), 6_000); }
  unsent = state.waiting;
});

let soon = 0;
let wait = 1_500;

/** What a list or a card is drawn from. */
function known() {
  return [state.today?.tag, state.today?.madeAt && isStale(), state.waiting, state.trouble, state.extras, location.pathname].join();
}

addEventListener('online', () => { state.online = true; changed(); catchUp(); });
addEventListener('offline', () => { state.online = false; changed(); });
document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'visible') catchUp(); });
setInterval(() => { if (document.visibilityState === 'visible') catchUp(); }, 60_000);

async function keepApp() {
  const registration = await navigator.serviceWorker.register('/dock/sw.js', { scope: '/dock/', updateViaCache: 'none' });
  const ready = () => {
    if (registration.waiting && navigator.serviceWorker.controller) { state.update = registration.waiting; changed(); }
  };
  ready();
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', ready));
  // Only a version that somebody asked for takes over a page that is open; the first one just begins to keep it.
  let hadOne = !!navigator.serviceWorker.controller;
  navigator.serviceWorker.addEventListener('controllerchange', () => { if (hadOne) location.reload(); hadOne = true; });
  setInterval(() => registration.update().catch(() => {}), 30 * 60_000);
}
