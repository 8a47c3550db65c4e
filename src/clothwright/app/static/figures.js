// Figures as they stand on a tape: inches in sixteenths, centimetres in tenths.

const gcd = (a, b) => (b ? gcd(b, a % b) : a);

/** A length in the reader's unit, in plain characters: "12 3/8 in", "31.4 cm". */
export function say(cm, unit, mark = true) {
  const end = mark ? ` ${unit}` : '';
  if (unit === 'cm') return `${(Math.abs(cm) < 0.05 ? 0 : cm).toFixed(1)}${end}`;
  const parts = Math.floor(Math.abs(cm) / 2.54 * 16 + 0.5 + 1e-9);
  const whole = Math.floor(parts / 16), num = parts % 16, g = gcd(num, 16);
  const fraction = num ? `${num / g}/${16 / g}` : '';
  const sign = cm < 0 && parts ? '-' : '';
  return sign + [whole || !num ? whole : '', fraction].filter((x) => x !== '').join(' ') + end;
}

const FRACTION = /(?:(\d+) )?(\d+)\/(\d+)/g;

/** Text with its fractions built from small figures; readers hear the plain text. */
export function figured(text) {
  const out = document.createDocumentFragment();
  let from = 0;
  for (const m of text.matchAll(FRACTION)) {
    out.append(text.slice(from, m.index));
    const span = make('span', { class: 'fr' });
    if (m[1]) span.append(m[1]);
    span.append(make('sup', {}, m[2]), make('i', {}, '⁄'), make('sub', {}, m[3]));
    span.setAttribute('role', 'text');
    span.setAttribute('aria-label', m[0]);
    out.append(span);
    from = m.index + m[0].length;
  }
  out.append(text.slice(from));
  return out;
}

/** An element with attributes and children; text is always text. */
export function make(tag, attributes = {}, ...children) {
  const el = document.createElement(tag);
  for (const [k, v] of Object.entries(attributes)) {
    if (v === false || v == null) continue;
    if (k.startsWith('on')) el.addEventListener(k.slice(2), v);
    else el.setAttribute(k, v === true ? '' : v);
  }
  el.append(...children.filter((c) => c != null));
  return el;
}

const breadths = new Map();
let pen = null;

/** How wide a piece's name is by the height of its letters, in the font of the page. */
export function breadth(name) {
  if (!breadths.has(name)) {
    pen ??= document.createElement('canvas').getContext('2d');
    pen.font = `italic 100px ${getComputedStyle(document.documentElement).getPropertyValue('--serif')}`;
    breadths.set(name, pen.measureText(name).width / 100);
  }
  return breadths.get(name);
}

const SVG = 'http://www.w3.org/2000/svg';

/** The same for a drawing. */
export function draw(tag, attributes = {}, ...children) {
  const el = document.createElementNS(SVG, tag);
  for (const [k, v] of Object.entries(attributes)) if (v != null) el.setAttribute(k, v);
  el.append(...children.filter((c) => c != null));
  return el;
}

export const still = () => matchMedia('(prefers-reduced-motion: reduce)').matches;
