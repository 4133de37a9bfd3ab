// Speed over ground from the phone's positions: the doppler speed where the phone gives it, else from one fix to the next.

const EARTH = 6_371_000; // [m] mean radius
const KNOT = 1852 / 3600; // [m/s]
const PATIENCE = 10_000; // without a position [ms]

/** @typedef {{ at: number, knots: number, heading: number, doppler: boolean }} Sample `at` [ms] */

/** @param {{ latitude: number, longitude: number }} a @param {{ latitude: number, longitude: number }} b */
function leg(a, b) {
  const rad = Math.PI / 180;
  const north = (b.latitude - a.latitude) * rad;
  const east = (b.longitude - a.longitude) * rad * Math.cos((a.latitude + b.latitude) / 2 * rad);
  return { metres: EARTH * Math.hypot(north, east), heading: (Math.atan2(east, north) / rad + 360) % 360 };
}

/** One fix after another as speed and heading; null when the fix says nothing new. @param {GeolocationPosition | null} last @param {GeolocationPosition} now @returns {Sample | null} */
export function sampleOf(last, now) {
  const { speed, heading } = now.coords;
  if (speed !== null && heading !== null && !Number.isNaN(heading)) return { at: now.timestamp, knots: speed / KNOT, heading, doppler: true };
  if (!last) return null;
  const seconds = (now.timestamp - last.timestamp) / 1000;
  if (seconds < 0.2) return null;
  const way = leg(last.coords, now.coords);
  return { at: now.timestamp, knots: (speed ?? way.metres / seconds) / KNOT, heading: heading ?? way.heading, doppler: speed !== null };
}

/**
 * The last stretch over which speed and heading held: within 4 % or 0.7 kn of its mean, and 12 degrees.
 * @param {Sample[]} samples
 * @returns {{ knots: number, spread: number, heading: number, seconds: number, doppler: boolean } | null} `spread`: one standard deviation [kn]
 */
export function steady(samples) {
  let best = null;
  for (let from = samples.length - 2; from >= 0; from--) {
    const part = samples.slice(from);
    const knots = mean(part.map(s => s.knots));
    const heading = meanHeading(part.map(s => s.heading));
    const room = Math.max(0.7, 0.04 * knots);
    if (part.some(s => Math.abs(s.knots - knots) > room || turn(s.heading, heading) > 12)) break;
    const seconds = (part[part.length - 1].at - part[0].at) / 1000;
    if (seconds > 90) break;
    best = { knots, spread: Math.sqrt(mean(part.map(s => (s.knots - knots) ** 2)) * part.length / (part.length - 1)), heading, seconds, doppler: part.every(s => s.doppler) };
  }
  return best;
}

/** @param {number[]} values */
const mean = values => values.reduce((a, b) => a + b, 0) / values.length;

/** @param {number} a @param {number} b */
const turn = (a, b) => { const d = Math.abs(a - b) % 360; return Math.min(d, 360 - d); };

/** @param {number[]} headings */
function meanHeading(headings) {
  const rad = Math.PI / 180;
  return (Math.atan2(mean(headings.map(h => Math.sin(h * rad))), mean(headings.map(h => Math.cos(h * rad)))) / rad + 360) % 360;
}

/** Watches until it is told to stop. @param {(sample: Sample | null) => void} then @param {(why: 'denied' | 'none') => void} failed @returns {() => void} */
export function watch(then, failed) {
  if (!navigator.geolocation) { failed('none'); return () => {}; }
  /** @type {GeolocationPosition | null} */
  let last = null;
  let patience = 0;
  const id = navigator.geolocation.watchPosition(p => { clearTimeout(patience); patience = 0; const s = sampleOf(last, p); last = p; then(s); }, e => {
    if (e.code === 1) failed('denied');
    // A bridge, a wave, a hand over the phone: the position comes back by itself.
    else patience ||= setTimeout(() => failed('none'), PATIENCE);
  }, { enableHighAccuracy: true, maximumAge: 0, timeout: 30_000 });
  return () => { clearTimeout(patience); navigator.geolocation.clearWatch(id); };
}
