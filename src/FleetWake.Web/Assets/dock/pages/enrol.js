// Makes this phone one of the dock's: by the code that the office shows as a QR.

import { Offline, Problem } from '../api.js';
import { enrol } from '../device.js';
import { h } from '../dom.js';
import { form } from '../form.js';
import { textField } from '../fields.js';
import { go } from '../router.js';
import { room } from '../space.js';
import { send } from '../sending.js';
import { state } from '../state.js';
import { t } from '../texts.js';
import { refresh } from '../today.js';

export async function show() {
  // The code stands behind the #, which no server ever sees; it leaves the address at once, so that nobody reads it there.
  const code = location.hash.slice(1);
  if (code) history.replaceState(null, '', '/dock/enrol');
  if (state.device && !state.device.ended) return { title: t('dock-enrol.already'), body: [h('p', null, t('dock-enrol.already_what', { dock: state.device.dockName })), h('a.button', { href: '/dock/' }, t('dock-enrol.to_boats'))] };
  if (!isSecureContext || !crypto.subtle) return { title: t('dock-enrol.title'), body: h('p.wrong', null, t('dock-enrol.not_secure')) };

  const fields = {
    code: textField(t('dock-enrol.code'), { value: code, needed: true, attributes: { autocapitalize: 'none', spellcheck: 'false' } }),
    name: textField(t('dock-enrol.name'), { needed: true, most: 60, hint: t('dock-enrol.name_what') }),
  };
  const little = await room();
  const body = await form({
    key: 'enrol', draft: false, plain: true, fields, words: t('dock-enrol.do'),
    body: [code ? null : h('p.note', null, t('dock-enrol.scan')), little?.nearly ? h('p.note', null, t('dock.room_nearly')) : null, fields.code.node, fields.name.node],
    record: async values => {
      try {
        await enrol(values.code, values.name);
      } catch (error) {
        // A code that came by a link and is no good is typed anew.
        fields.code.node.hidden = false;
        if (error instanceof Offline) throw new Error(t(error.after > 0 ? 'dock-enrol.wait' : 'dock-enrol.offline'));
        if (error instanceof Problem && (error.status === 410 || error.kind === 'code-used-or-expired')) throw new Error(t('dock-enrol.used'));
        if (error instanceof Problem && error.kind === 'carries-another-fleet') throw new Error(t('dock-enrol.other_fleet'));
        throw error;
      }
      await refresh();
      send().catch(console.error);
      await go('/dock/who', { replace: true });
    },
  });
  if (code) fields.code.node.hidden = true;
  return { title: state.device?.ended ? t('dock-enrol.again') : t('dock-enrol.title'), body };
}
