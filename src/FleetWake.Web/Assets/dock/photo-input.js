// A key that opens the camera, and makes what it took small before anything else.

import { h } from './dom.js';
import { small } from './photos.js';
import { t } from './texts.js';

/** @param {(taken: import('./photos.js').Taken[]) => any} then @param {string=} words */
export function photoInput(then, words) {
  const said = h('p.wrong', { role: 'status' });
  const input = h('input.hidden-file', {
    type: 'file', accept: 'image/*', capture: 'environment', multiple: true,
    onchange: async () => {
      /** @type {import('./photos.js').Taken[]} */
      const taken = [];
      said.textContent = '';
      for (const file of input.files) {
        try { taken.push(await small(file)); } catch { said.textContent = t('dock-photo.unreadable'); }
      }
      input.value = '';
      if (taken.length > 0) await then(taken);
    },
  });
  return h('div.photo', null, h('label.button.plain', null, input, h('span', null, words ?? t('dock-photo.take'))), said);
}
