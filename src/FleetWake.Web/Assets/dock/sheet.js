// The steps of a mounting, in the order in which they are done, each with its caution. A step that was not ticked is not
// recorded as done; whoever enters yesterday's work is asked for torque and pin only.

import { fill, h } from './dom.js';
import { numberField, tick } from './fields.js';
import { fasteningOf, nutHelp, torqueField } from './nut.js';
import { t } from './texts.js';

/** @param {() => boolean} isLate entered afterwards: the short sheet */
export function sheet(isLate) {
  const node = h('div');
  /** @type {any} */
  let engine;
  /** @type {Record<string, any>} */
  let ticked = {};
  let torque = torqueField(null);
  let slots = numberField('', {});
  let shownLate = isLate();

  const step = (/** @type {string} */ name, /** @type {any[]} */ ...more) => {
    const box = tick(t('dock-mounting.step_' + name), ticked[name]);
    box.input.addEventListener('change', () => { ticked[name] = box.get(); count(); });
    return h('li', null, box.node, h('p.quiet.small', null, t(`dock-mounting.step_${name}_what`)), more);
  };
  const left = h('p.small', { role: 'status' });

  function names() {
    const castle = fasteningOf(engine) === 'castle_nut_cotter_pin' || fasteningOf(engine) === 'unknown';
    return shownLate ? [castle ? 'pin' : 'held'] : ['safe', 'seal', 'grease', 'hardware', 'torque', castle ? 'pin' : 'held', 'free'];
  }

  function count() {
    const open = names().filter(n => !ticked[n]).length;
    left.textContent = shownLate ? '' : open === 0 ? t('dock-mounting.all_ticked') : t(open === 1 ? 'dock-mounting.open_one' : 'dock-mounting.open', { n: open });
  }

  function build() {
    shownLate = isLate();
    const kept = { torque: torque.get(), slots: slots.get() };
    torque = torqueField(engine);
    torque.set(kept.torque);
    const most = engine?.fastening?.slots;
    slots = numberField(t('dock-mounting.slots'), { whole: true, least: 0, most: most ?? 10, hint: t('dock-mounting.slots_what') });
    slots.set(kept.slots);
    const castle = fasteningOf(engine) === 'castle_nut_cotter_pin';
    const more = (/** @type {string} */ n) => n === 'torque' ? [torque.node, nutHelp(engine), castle ? slots.node : null] : [];
    fill(node, h('h2', null, t(shownLate ? 'dock-mounting.short' : 'dock-mounting.steps')),
      shownLate ? [torque.node, castle ? slots.node : null, h('ul.steps', null, names().map(n => step(n)))] : h('ol.steps', null, names().map(n => step(n, ...more(n)))),
      left, engine?.fastening?.retorque === false ? null : h('p.note', null, t('dock-mounting.retorque')));
    count();
  }

  build();
  return {
    node,
    of: (/** @type {any} */ e) => { engine = e; build(); },
    draw: () => { if (isLate() !== shownLate) build(); },
    get: () => ({ ticked, torque: torque.get(), slots: slots.get() }),
    set: (/** @type {any} */ v) => { ticked = v?.ticked ?? {}; torque.set(v?.torque); slots.set(v?.slots); build(); },
    read: () => {
      const [n, s] = [torque.read(), slots.node.isConnected ? slots.read() : { value: null }];
      torque.say(n.wrong ?? null);
      slots.say(s.wrong ?? null);
      if (n.wrong || s.wrong) return { wrong: n.wrong ?? s.wrong, value: {} };
      const yes = (/** @type {string} */ name) => ticked[name] && names().includes(name) ? true : null;
      return {
        value: {
          sealClearOfLine: yes('seal'), shaftGreased: yes('grease'), hardwareInOrder: yes('hardware'),
          torque: n.value, torqueUnit: n.value === null ? null : torque.unit, slotsAdvanced: s.value, newCotterPin: yes('pin'),
        },
      };
    },
  };
}
