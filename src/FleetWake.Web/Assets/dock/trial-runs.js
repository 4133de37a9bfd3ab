// The runs of a trial. The phone measures speed and heading while the boat runs; the RPM is typed with the throttle down,
// by somebody who neither steers nor looks out.

import { fill, h } from './dom.js';
import { numberField, pick, tick } from './fields.js';
import { steady, watch } from './gps.js';
import { number, t, w } from './texts.js';

/** @param {any[]} positions @param {() => void} changed */
export function runs(positions, changed) {
  const node = h('section', { 'aria-label': t('dock-trial.runs') });
  const list = h('div');
  /** @type {ReturnType<typeof run>[]} */
  let all = [];
  let guided = false;
  let stop = () => {};
  const another = h('button.plain', { type: 'button', onclick: () => { add(); draw(); } });
  fill(node, h('h2', null, t('dock-trial.runs')), h('p.note', null, t('dock-trial.who_types')), list, another);

  /** @param {any=} kept */
  function add(kept) { all.push(run(kept)); }

  /** @param {any=} kept */
  function run(kept) {
    const speed = numberField(t('dock-trial.speed'), { least: 0, most: 250, oninput: changed });
    const unit = pick(t('dock-trial.unit'), ['kn', 'mph', 'km_per_h', 'm_per_s'].map(value => ({ value, words: w('unit', value) })), { value: 'kn', onchange: changed });
    const heading = numberField(t('dock-trial.heading'), { unit: '°', least: 0, most: 360, oninput: () => { draw(); changed(); } });
    const seconds = numberField(t('dock-trial.seconds'), { unit: 's', least: 1, most: 3600, oninput: changed });
    const engines = positions.map(p => {
      const of = (/** @type {string} */ words) => positions.length > 1 ? `${words}, ${w('position', p.position)}` : words;
      return { position: p.position, rpm: numberField(of(t('dock-trial.rpm')), { unit: 'RPM', least: 300, most: 12000, oninput: changed }), limiter: tick(of(t('dock-trial.limiter'))), ventilated: tick(of(t('dock-trial.ventilated'))) };
    });
    const live = h('p.live', { role: 'status' });
    const measure = h('button', { type: 'button', onclick: () => start(mine) }, t('dock-trial.measure'));
    const title = h('h3');
    const away = h('button.plain', { type: 'button', onclick: () => { all = all.filter(r => r !== mine); draw(); changed(); } }, t('dock-trial.run_away'));
    const mine = {
      speed, unit, heading, seconds, engines, live, measure, title,
      node: h('div.sheet.run', null, title, h('div.measure', null, measure, live), h('div.row', null, speed.node, unit.node), h('div.row', null, heading.node, seconds.node), engines.map(e => [e.rpm.node, e.limiter.node, e.ventilated.node]), away),
      get: () => ({ speed: speed.get(), unit: unit.get(), heading: heading.get(), seconds: seconds.get(), engines: engines.map(e => ({ rpm: e.rpm.get(), limiter: e.limiter.get(), ventilated: e.ventilated.get() })) }),
    };
    for (const e of engines) for (const box of [e.limiter, e.ventilated]) box.input.addEventListener('change', changed);
    if (kept) {
      speed.set(kept.speed); unit.set(kept.unit); heading.set(kept.heading); seconds.set(kept.seconds);
      engines.forEach((e, i) => { e.rpm.set(kept.engines[i]?.rpm); e.limiter.set(kept.engines[i]?.limiter); e.ventilated.set(kept.engines[i]?.ventilated); });
    }
    return mine;
  }

  /** Measures until somebody takes the stretch. @param {ReturnType<typeof run>} r */
  function start(r) {
    stop();
    /** @type {import('./gps.js').Sample[]} */
    const samples = [];
    const say = h('p', null, t('dock-trial.waiting'));
    const take = h('button', { type: 'button', disabled: true }, t('dock-trial.take'));
    const end = watch(sample => {
      if (sample) samples.push(sample);
      if (samples.length > 600) samples.shift();
      const found = steady(samples);
      const ripe = !!found && found.seconds >= 10;
      take.disabled = !ripe;
      fill(say, sample ? h('strong.number', null, t('dock-trial.live', { knots: number(sample.knots, 1), heading: number(sample.heading) })) : t('dock-trial.waiting'),
        found ? h('span.small', null, ' ' + t(ripe ? 'dock-trial.steady' : 'dock-trial.settling', { seconds: number(found.seconds), mean: number(found.knots, 1), spread: number(found.spread, 2) })) : null);
      take.onclick = () => {
        if (!found) return;
        stop();
        r.speed.set(found.knots.toFixed(2)); r.unit.set('kn'); r.heading.set(found.heading.toFixed(0) === '360' ? '0' : found.heading.toFixed(0)); r.seconds.set(String(Math.round(found.seconds)));
        fill(r.live, t(found.doppler ? 'dock-trial.took_doppler' : 'dock-trial.took', { seconds: Math.round(found.seconds), spread: number(found.spread, 2) }));
        draw();
        changed();
        r.engines[0]?.rpm.input.focus();
        node.dispatchEvent(new Event('input', { bubbles: true }));
      };
    }, why => { stop(); fill(r.live, h('span.wrong', null, t(why === 'denied' ? 'dock-trial.gps_denied' : 'dock-trial.gps_none'))); });
    stop = () => { end(); stop = () => {}; };
    fill(r.live, say, h('div.row', null, take, h('button.plain', { type: 'button', onclick: () => { stop(); fill(r.live); } }, t('dock-trial.measure_stop'))));
  }

  function draw() {
    fill(list, all.map((r, i) => {
      const first = all[0].heading.read().value;
      const asks = i % 2 === 1 && typeof first === 'number' && !Number.isNaN(first) ? ' ' + t('dock-trial.opposite', { heading: number((first + 180) % 360) }) : '';
      fill(r.title, t('dock-trial.run', { n: i + 1 }) + asks);
      r.measure.parentElement.hidden = !guided;
      r.node.lastChild.hidden = all.length < 2;
      return r.node;
    }));
    fill(another, t(all.length === 1 ? 'dock-trial.back_run' : 'dock-trial.another_run'));
    another.hidden = all.length >= 12;
  }

  add(); add();
  draw();
  return {
    node, stop: () => stop(),
    guide: (/** @type {boolean} */ yes) => { if (!yes) stop(); guided = yes; draw(); },
    get: () => all.map(r => r.get()),
    set: (/** @type {any} */ kept) => { if (Array.isArray(kept) && kept.length > 0) { all = []; kept.forEach(add); draw(); } },
    /** The runs at one position that say enough. @param {string} position */
    of: position => all.map(r => {
      const engine = r.engines.find(e => e.position === position);
      const [speed, heading, rpm, seconds] = [r.speed.read(), r.heading.read(), engine?.rpm.read(), r.seconds.read()];
      return heading.wrong || heading.value === null || !rpm || rpm.wrong || rpm.value === null ? null
        : { speed: speed.wrong ? null : speed.value, unit: r.unit.get(), heading: heading.value, rpm: rpm.value, seconds: seconds.wrong ? null : seconds.value, limiter: engine?.limiter.get(), ventilated: engine?.ventilated.get() };
    }).filter(r => r !== null),
    /** As the record wants them. */
    read: () => {
      const value = [];
      for (const r of all) {
        const empty = r.speed.get() === '' && r.heading.get() === '' && r.engines.every(e => e.rpm.get() === '');
        if (empty && all.length > 1) continue;
        let wrong = null;
        const need = (/** @type {import('./fields.js').Field} */ f) => { const read = f.read(); const why = read.wrong ?? (read.value === null ? t('dock-form.needed') : null); f.say(why); wrong ??= why; return read.value; };
        const run = { speed: need(r.speed), speedUnit: r.unit.get(), headingDegrees: need(r.heading), tachometers: r.engines.filter(e => e.rpm.get() !== '' || r.engines.length === 1).map(e => ({ position: e.position, rpm: need(e.rpm), ...(e.limiter.get() ? { limiterReached: true } : {}), ...(e.ventilated.get() ? { ventilated: true } : {}) })), ...(r.seconds.read().value ? { seconds: r.seconds.read().value } : {}) };
        if (run.tachometers.length === 0) { r.engines[0].rpm.say(t('dock-form.needed')); wrong ??= t('dock-form.needed'); }
        if (wrong) return { wrong: t('dock-trial.run_incomplete'), value: [] };
        value.push(run);
      }
      return value.length === 0 ? { wrong: t('dock-trial.run_incomplete'), value } : { value };
    },
  };
}
