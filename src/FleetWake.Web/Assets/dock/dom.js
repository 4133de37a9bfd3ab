// Elements by hand: h('button.plain', { onclick }, 'Words'). Text is always text, never markup.

/**
 * @param {string} tag a name with classes, as in 'p.quiet.small'
 * @param {Record<string, any> | null=} props attributes; on* are listeners; false, null and undefined are left out
 * @param {...any} children nodes, texts, lists of them; null and false are left out
 * @returns {any}
 */
export function h(tag, props, ...children) {
  const [name, ...classes] = tag.split('.');
  const element = document.createElement(name || 'div');
  if (classes.length) element.className = classes.join(' ');
  for (const [key, value] of Object.entries(props ?? {})) {
    if (value === false || value === null || value === undefined) continue;
    if (key.startsWith('on')) element.addEventListener(key.slice(2), value);
    else if (key === 'value' || key === 'checked' || key === 'hidden') element[key] = value;
    else element.setAttribute(key, value === true ? '' : String(value));
  }
  element.append(...children.flat(Infinity).filter(c => c !== null && c !== undefined && c !== false));
  return element;
}

/** @param {Element} element @param {...any} children */
export function fill(element, ...children) {
  element.replaceChildren(...children.flat(Infinity).filter(c => c !== null && c !== undefined && c !== false));
}

let lastId = 0;

/** An id of its own for a label. */
export const freshId = () => 'x' + ++lastId;

/** A link that the app follows by itself. @param {string} path @param {...any} children */
export const link = (path, ...children) => h('a', { href: path }, ...children);

/**
 * A word with a shape before it; the colour only repeats it.
 * @param {'in' | 'look' | 'out' | string} kind
 * @param {string} words
 */
export const state = (kind, words) => h('span.state.' + kind, null, words);

const SHAPES = {
  boats: 'M3 14h18l-3 5H6zM12 3v8M12 4l5 7H12', outbox: 'M4 13v6h16v-6M12 15V4M8 8l4-4 4 4', sent: 'M4 13v6h16v-6M8 9l3 3 6-7', trouble: 'M12 4L3 20h18zM12 10v4M12 17v.5', phone: 'M7 3h10v18H7zM11 18h2',
};

/** A small drawing beside words, which say the same. @param {keyof typeof SHAPES} name */
export function shape(name) {
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  svg.setAttribute('viewBox', '0 0 24 24');
  svg.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
  path.setAttribute('d', SHAPES[name]);
  svg.append(path);
  return svg;
}

/** The first letter large. @param {string} words */
export const begin = words => words.charAt(0).toUpperCase() + words.slice(1);

/** A sentence of its own, however it came. @param {string} words */
export const sentence = words => begin(words) + (/[.!?:]$/.test(words) ? '' : '.');

/** A line of term and value. @param {string} term @param {...any} value */
export const line = (term, ...value) => h('div.line', null, h('dt', null, term), h('dd', null, ...value));
