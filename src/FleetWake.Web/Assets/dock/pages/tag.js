// The tag of an engine or a prop leads to the boat that carries it.

import { h, line } from '../dom.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';
import { boatOfEngine, boatOfProp, refresh } from '../today.js';
import { propWords } from '../words.js';

export async function show(/** @type {'e' | 'p'} */ what, /** @type {string} */ id) {
  if (!state.today) await refresh();
  const boat = what === 'e' ? boatOfEngine(id) : boatOfProp(id);
  if (boat) return '/dock/b/' + encodeURIComponent(boat);
  const spare = what === 'p' ? state.today?.spares?.find((/** @type {any} */ s) => s.prop === id) : null;
  return {
    title: id,
    body: spare ? h('section.sheet', null, h('dl', null, line(t('dock-tag.spare'), propWords(spare)), line(t('dock-tag.lies'), spare.dock ?? t('dock-tag.not_known')), line(t('dock-tag.turns'), w('rotation', spare.rotation))))
      : h('p.note', null, t(what === 'e' ? 'dock-tag.no_engine' : 'dock-tag.no_prop')),
  };
}
