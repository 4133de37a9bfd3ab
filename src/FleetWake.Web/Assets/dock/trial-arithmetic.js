// What a trial shows, by the same arithmetic as the office (FleetWake.Propulsion), so that it can be told on the water
// without signal. The office's finding goes first; a test holds the two together.

const KNOT = 1852 / 3600; // [m/s]

/** @typedef {'single_run' | 'double_run' | 'three_runs' | 'four_runs' | 'mean_of_headings' | 'headings_not_opposed'} Method */

/** The angle between two headings [degrees], 0 to 180. @param {number} a @param {number} b */
export function apart(a, b) {
  const turn = Math.abs(a - b) % 360;
  return Math.min(turn, 360 - turn);
}

/**
 * Which runs went out and which came back, and what each counts in a mean that a steady current is not in.
 * @param {number[]} headings [degrees]
 * @returns {{ isOut: boolean[], weights: number[], method: Method, error: number | null }} `error`: largest departure from opposition [degrees]
 */
export function opposition(headings) {
  const n = headings.length;
  const isOut = headings.map(h => apart(headings[0], h) < 90);
  const bothWays = isOut.includes(false);
  let error = /** @type {number | null} */ (null);
  if (n > 1) {
    error = 0;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        if (bothWays ? isOut[i] && !isOut[j] : j === i + 1) error = Math.max(error, 180 - apart(headings[i], headings[j]));
  }

  /** @type {Method} */
  let method = 'mean_of_headings';
  if (error === null) method = 'single_run';
  else if (!bothWays || error > 30) method = 'headings_not_opposed';
  else if (isOut.every((out, i) => out === (i % 2 === 0))) method = /** @type {Record<number, Method>} */ ({ 2: 'double_run', 3: 'three_runs', 4: 'four_runs' })[n] ?? method;

  const there = isOut.filter(o => o).length;
  const weights = /** @type {Partial<Record<Method, number[]>>} */ ({ double_run: [1 / 2, 1 / 2], three_runs: [1 / 4, 2 / 4, 1 / 4], four_runs: [1 / 8, 3 / 8, 3 / 8, 1 / 8] })[method]
    ?? isOut.map(out => method === 'mean_of_headings' ? 0.5 / (out ? there : n - there) : 1 / n);
  return { isOut, weights, method, error };
}

/** @param {number[]} weights @param {number[]} values */
const weighed = (weights, values) => weights.reduce((sum, w, i) => sum + w * values[i], 0);

/**
 * How much more power reference air (25 deg C, 990 hPa dry) would give: SAE J1349 in its form of 1990.
 * @param {number} celsius @param {number} hectopascals @param {number} humidity 0 to 1
 */
export function powerFactor(celsius, hectopascals, humidity) {
  const saturation = 6.1094 * Math.exp(17.625 * celsius / (celsius + 243.04)); // [hPa]
  return 1.18 * (990 / (hectopascals - humidity * saturation)) * Math.sqrt((celsius + 273) / 298) - 0.18;
}

/**
 * @typedef {{ speedKnots: number | null, heading: number, rpm: number, limiter?: boolean, ventilated?: boolean, seconds?: number | null }} Run
 * @typedef {{ gain: number, lowestFactor: number, highestFactor: number, missing: { pressureHPa: number, relativeHumidity: number } }} Reference
 */

/**
 * One engine's trial.
 * @param {{ runs: Run[], part?: boolean, step?: number | null, tachometerErrorPercent?: number | null, gearRatio?: number | null, pitchInches?: number | null,
 *   celsius?: number | null, hectopascals?: number | null, humidity?: number | null, reference?: Reference | null, band?: { low: number, high: number } | null }} trial humidity 0 to 1
 */
export function workOut(trial) {
  const { runs, part = false, band = null } = trial;
  const all = opposition(runs.map(r => r.heading));
  const rpms = runs.map(r => r.rpm);
  const rpm = weighed(all.weights, rpms);
  const timed = runs.filter(r => r.speedKnots !== null);
  const some = timed.length > 0 ? opposition(timed.map(r => r.heading)) : all;
  const knots = timed.length > 0 ? weighed(some.weights, timed.map(r => /** @type {number} */ (r.speedKnots))) : null;
  const shown = 1 + (trial.tachometerErrorPercent ?? 0) / 100; // what the tachometer shows over what is true
  const turned = rpm / shown;

  let slip = null;
  if (knots !== null && trial.gearRatio && trial.pitchInches) {
    const rpmOfTimed = weighed(some.weights, timed.map(r => r.rpm)) / shown;
    slip = 1 - knots * KNOT / (rpmOfTimed / trial.gearRatio / 60 * trial.pitchInches * 0.0254);
  }

  let factor = null;
  let applied = false;
  if (!part && trial.reference && trial.celsius !== null && trial.celsius !== undefined) {
    const { missing } = trial.reference;
    factor = powerFactor(trial.celsius, trial.hectopascals ?? missing.pressureHPa, trial.humidity ?? missing.relativeHumidity);
    applied = factor >= trial.reference.lowestFactor && factor <= trial.reference.highestFactor;
  }

  const corrected = applied ? turned * (/** @type {number} */ (factor)) ** /** @type {Reference} */ (trial.reference).gain : turned;
  return {
    rpm, turned, corrected, applied, factor, knots, slip, method: some.method, error: some.error,
    split: splitOf(all, rpms), limiter: runs.some(r => r.limiter), margin: band ? marginOf(corrected, band) : null, marginAsRead: band ? marginOf(turned, band) : null,
  };
}

/** How far the means of the two headings lie apart [rev/min]; null when all runs went one way. @param {{ isOut: boolean[] }} all @param {number[]} rpms */
function splitOf(all, rpms) {
  const mean = (/** @type {boolean} */ out) => { const of = rpms.filter((_, i) => all.isOut[i] === out); return of.reduce((a, b) => a + b, 0) / of.length; };
  return all.isOut.includes(false) ? Math.abs(mean(true) - mean(false)) : null;
}

/** Distance to the nearer edge, negative outside. @param {number} rpm @param {{ low: number, high: number }} band */
export function marginOf(rpm, band) {
  const [top, bottom] = [band.high - rpm, rpm - band.low];
  return { rpm: Math.min(top, bottom), edge: top <= bottom ? /** @type {const} */ ('top') : /** @type {const} */ ('bottom') };
}

/** @param {number} value @param {string} unit */
export const toKnots = (value, unit) => value * ({ kn: 1, mph: 0.44704 / KNOT, km_per_h: 1 / 3.6 / KNOT, m_per_s: 1 / KNOT }[unit] ?? NaN);
