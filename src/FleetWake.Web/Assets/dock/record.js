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

/**
 * @param {any} card @param {{ kind: string, record: Record<string, any> }[]} records
 * @param {{ at?: Date | null, photos?: import('./photos.js').Taken[], note?: string | null, amends?: string, links?: { from: number, field: string, to: number }[] }=} more
 */
export async function recorded(card, records, more = {}) {
  const made = await add(records.map(r => ({ kind: r.kind, record: said(r.record) })), { boat: card.boat, boatName: card.name, at: more.at ?? undefined, note: more.note ?? '', amends: more.amends, links: more.links });
  const lost = more.photos?.length ? await keepPhotos(made[0].id, more.photos) : 0;
  send();
  await go('/dock/entry/' + made[0].id + '?new', { replace: true });
  tell(lost > 0 ? t('dock-photo.no_room') : t('dock-form.recorded'));
}
