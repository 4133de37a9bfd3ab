// The words of the app: one file a language, kept with the app. Numbers and dates follow the phone's own locale.

/** @type {Record<string, string>} */
let words = {};

/** Loads them; the page names the file. */
export async function loadTexts() {
  const asked = await fetch(/** @type {string} */ (document.body.dataset.texts));
  // Another version of the words is better than none, while the office is being renewed.
  words = await (asked.ok ? asked : await fetch('/dock/texts.json')).json();
}

/**
 * The words of a key, its places filled. A key without words shows itself, so that a screen is never empty.
 * @param {string} key
 * @param {Record<string, any>=} places
 */
export function t(key, places) {
  let text = words[key] ?? key;
  for (const [name, value] of Object.entries(places ?? {})) text = text.replaceAll(`{${name}}`, String(value));
  return text;
}

/** A word of a record, e.g. w('severity', 'chipped'). @param {string} list @param {string} word */
export const w = (list, word) => words[`dock-words.${list}_${word}`] ?? String(word).replaceAll('_', ' ');

/** One or many. @param {string} key @param {number} n @param {Record<string, any>=} places */
export const count = (key, n, places) => t(n === 1 ? key + '_one' : key, { n: number(n), ...places });

/** A number as people here write it. @param {number} value @param {number=} digits */
export const number = (value, digits = 0) => new Intl.NumberFormat(undefined, { maximumFractionDigits: digits, minimumFractionDigits: 0 }).format(value);

/** "1,234" is a thousand and more to one, and little more than one to another: nobody may guess. @param {string} text */
export const mayBeThousands = text => /^[1-9]\d{0,2},\d{3}$/.test(text.trim());

/**
 * Reads what somebody typed, with a comma or a point.
 * @param {string} text
 * @returns {number | null} null when it is empty, NaN when it is no number
 */
export function readNumber(text) {
  if (mayBeThousands(text)) return NaN;
  const trimmed = text.trim().replace(/\s/g, '').replace(',', '.');
  if (trimmed === '') return null;
  return /^-?\d*\.?\d+$|^-?\d+\.$/.test(trimmed) ? Number(trimmed) : NaN;
}
