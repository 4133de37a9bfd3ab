// The last step of every act: the records are on the disk, then the page says so and offers what may follow.

import { add } from './outbox.js';
import { go, tell } from './router.js';
import { send } from './sending.js';
import { t } from './texts.js';
import { keepPhotos } from './photos.js';

/**
 * Leaves out what was not said, so that a record holds only what was read.
 * @param {Record<string, any>} fields
 */
export const said = fields => Object.fromEntries(Object.entries(fields).filter(([, v]) => v !== null && v !== undefined && v !== '' && !(Array.isArray(v) && v.length === 0)));

let busy = false;

/** Does one thing at a time: a second tap while the first is at work is that first one's shadow. @param {() => Promise<any>} work */
export async function once(work) {
  if (busy) return;
  busy = true;
  try {
    await work();
  } finally {
    busy = false;
  }
}

/**
 * @param {any} card @param {{ kind: string, record: Record<string, any> }[]} records
 * @param {{ at?: Date | null, photos?: import('./photos.js').Taken[], note?: string | null, amends?: string, draft?: string, links?: { from: number, field: string, to: number }[] }=} more
 */
export const recorded = (card, records, more = {}) => once(async () => {
  const made = await add(records.map(r => ({ kind: r.kind, record: said(r.record) })), { boat: card.boat, boatName: card.name, at: more.at ?? undefined, note: more.note ?? '', amends: more.amends, draft: more.draft, links: more.links });
  // It is kept. Whatever fails from here on, nobody may be told that it is not, nor type it again.
  const photos = more.photos ?? [];
  const lost = photos.length > 0 ? await keepPhotos(made[0].id, photos).catch(error => { console.error(error); return photos.length; }) : 0;
  send().catch(console.error);
  await go('/dock/entry/' + made[0].id + '?new', { replace: true }).catch(console.error);
  tell(lost > 0 ? t('dock-photo.no_room') : t('dock-form.recorded'));
});
