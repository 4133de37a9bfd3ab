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

/** A line of term and value. @param {string} term @param {...any} value */
export const line = (term, ...value) => h('div.line', null, h('dt', null, term), h('dd', null, ...value));
