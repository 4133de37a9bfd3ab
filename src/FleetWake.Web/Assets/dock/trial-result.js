// What a trial showed, in sentences: how good it is, what it comes to at reference air, and where that lies in the band.

import { h, line } from './dom.js';
import { number, t } from './texts.js';
import { toKnots, workOut } from './trial-arithmetic.js';

/**
 * @param {any} part a position of the card @param {any[]} runs @param {Record<string, number | null>} air @param {boolean} partThrottle
 */
export function resultOf(part, runs, air, partThrottle) {
  if (runs.length === 0) return h('p.quiet', null, t('dock-trial.no_result'));
  const engine = part.engine ?? {};
  const r = workOut({
    runs: runs.map(x => ({ ...x, speedKnots: x.speed === null ? null : toKnots(x.speed, x.unit) })), part: partThrottle, step: engine.tachometerStep, tachometerErrorPercent: engine.tachometerErrorPercent,
    gearRatio: engine.gearRatio, pitchInches: part.mounting?.pitchInches, celsius: air.airTemperatureCelsius, hectopascals: air.pressureHectopascals,
    humidity: air.humidityPercent === null || air.humidityPercent === undefined ? null : air.humidityPercent / 100, reference: part.reference, band: engine.ratedBand,
  });
  return [
    quality(r, runs, engine.tachometerStep, air),
    h('dl', null,
      line(t('dock-trial.as_read'), t('dock-trial.rpm_is', { n: number(r.rpm) }), engine.tachometerErrorPercent ? h('span.quiet.small', null, ' ' + t('dock-trial.turned', { n: number(r.turned) })) : null),
      partThrottle ? null : line(t('dock-trial.corrected'), r.applied ? [t('dock-trial.rpm_is', { n: number(r.corrected) }), h('span.quiet.small', null, ' ' + t('dock-trial.factor', { cf: number(/** @type {number} */ (r.factor), 3) }))]
        : t(!part.reference ? 'dock-trial.not_correctable' : r.factor === null ? 'dock-trial.no_temperature' : 'dock-trial.outside_validity')),
      line(t('dock-trial.speed_mean'), r.knots === null ? '–' : t('dock-trial.knots', { n: number(r.knots, 1) })),
      line(t('dock-trial.slip'), r.slip === null ? t('dock-trial.slip_unknown') : [t('dock-trial.slip_is', { n: number(r.slip * 100, 1) }), r.slip < 0 ? ' ' + t('dock-trial.slip_negative') : '']),
      partThrottle ? null : line(t('dock-trial.margin'), band(r, engine.ratedBand))),
  ];
}

/** @param {ReturnType<typeof workOut>} r @param {any} rated */
function band(r, rated) {
  if (!rated || !r.margin || !r.marginAsRead) return t('dock-card.see_manual');
  const say = (/** @type {{ rpm: number, edge: string }} */ m) => m.rpm < 0 ? t(m.edge === 'top' ? 'dock-trial.over' : 'dock-trial.under', { n: number(-m.rpm) }) : t(m.edge === 'top' ? 'dock-trial.below_top' : 'dock-trial.above_bottom', { n: number(m.rpm) });
  // Over is over: what the air gave back does not spare the engine, and a limiter only hides how much it was.
  if (r.limiter) return h('strong.wrong', null, t('dock-trial.limiter_over'));
  if (r.marginAsRead.rpm < 0 && r.marginAsRead.edge === 'top') return [h('strong.wrong', null, say(r.marginAsRead)), r.margin.rpm >= 0 ? ' ' + t('dock-trial.over_stays', { corrected: say(r.margin) }) : ''];
  return r.margin.rpm < 0 ? h('strong.wrong', null, say(r.margin)) : say(r.margin);
}

/** @param {ReturnType<typeof workOut>} r @param {any[]} runs @param {number | null | undefined} toldStep @param {Record<string, number | null>} air */
function quality(r, runs, toldStep, air) {
  const step = toldStep || 50;
  const bad = [];
  if (r.method === 'single_run') bad.push(t('dock-trial.one_run'));
  if (r.method === 'headings_not_opposed') bad.push(t('dock-trial.not_opposed', { apart: number(180 - (r.error ?? 180)) }));
  const split = r.split ?? 0;
  if (split > Math.max(step, 0.005 * r.rpm)) bad.push(t('dock-trial.split_wide', { split: number(split), step: number(step) }));
  if (runs.some(x => x.seconds !== null && x.seconds < 10)) bad.push(t('dock-trial.short'));
  if (runs.some(x => x.limiter)) bad.push(t('dock-trial.limited'));
  if (runs.some(x => x.ventilated)) bad.push(t('dock-trial.drew_air'));
  if (air.waterDepthMetres !== null && air.waterDepthMetres !== undefined && air.waterDepthMetres <= 3) bad.push(t('dock-trial.shallow'));
  if (bad.length > 0) return h('p.quality', null, h('strong', null, '▲ ' + t('dock-trial.doubtful')), ' ', bad.join('; ') + '.');
  return h('p.quality', null, h('strong', null, '● ' + t('dock-trial.good')), ' ', t('dock-trial.good_what', { apart: number(180 - (r.error ?? 0)), split: number(split), step: number(step) }));
}
