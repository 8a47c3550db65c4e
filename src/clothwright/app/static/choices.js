// Small line drawings of what a word can be: the drawing is the choice.

import { draw } from './figures.js';

const BODY = 'M4 15C9 24 9 30 6 40M60 15C55 24 55 30 58 40';
const NECKS = {
  standard: 'M20 9C22 20 42 20 44 9',
  round: 'M17 10C18 30 46 30 47 10',
  scoop: 'M15 11C15 40 49 40 49 11',
  boat: 'M11 12C18 21 46 21 53 12',
  V: 'M18 10L32 36L46 10',
  square: 'M17 10L19 30H45L47 10',
  sweetheart: 'M15 11L17 27C20 19 29 20 32 29C35 20 44 19 47 27L49 11',
  keyhole: 'M20 9C22 19 30 18 31 20C26 25 26 33 32 33C38 33 38 25 33 20C34 18 42 19 44 9',
};
const arc = (share) => {
  const half = Math.PI * share, r0 = 9, r1 = 27;
  const at = (r, t) => `${(32 + r * Math.sin(t)).toFixed(1)} ${(8 + r * Math.cos(t)).toFixed(1)}`;
  return `M${at(r0, -half)}A${r0} ${r0} 0 0 0 ${at(r0, half)}L${at(r1, half)}A${r1} ${r1} 0 0 1 ${at(r1, -half)}Z`;
};
const OTHERS = {
  'peplum.cut': {
    flared: arc(0.25),
    'in panels': `${arc(0.25)}M32 17V35M26 16L18 31M38 16L46 31`,
    gathered: 'M16 12H48V38H16ZM20 12q2 5 0 9M26 12q2 5 0 9M32 12q2 5 0 9M38 12q2 5 0 9M44 12q2 5 0 9',
  },
  'peplum.ends': { 'at the edges': 'M8 12C12 30 14 38 12 42H26L28 12M36 12L38 42H52C50 38 52 30 56 12', 'to the centre back': 'M8 12C12 30 14 38 12 42H52C50 38 52 30 56 12M32 12V42' },
  'loops.rows': { 'both edges': loops(true, true), 'the right edge': loops(false, true), 'both edges, laced': 'M24 6V42M40 6V42M24 10L40 18M40 10L24 18M24 20L40 28M40 20L24 28M24 30L40 38M40 30L24 38' },
};

function loops(left, right) {
  let d = 'M24 6V42M40 6V42';
  for (let y = 10; y < 40; y += 8) {
    if (left) d += `M24 ${y}c7 0 7 5 0 5`;
    if (right) d += `M40 ${y}c-7 0 -7 5 0 5`;
  }
  return d;
}

/** The drawing of one choice of a word, or nothing when words say it better. */
export function choiceDrawing(of, say) {
  const neck = of.endsWith('neckline.shape') ? NECKS[say] : null;
  const d = neck ?? OTHERS[of]?.[say];
  if (!d) return null;
  const svg = draw('svg', { width: 64, height: 46, viewBox: '0 0 64 46', 'aria-hidden': 'true' });
  if (neck) {
    const [x0, y0] = neck.match(/M(\d+) (\d+)/).slice(1);
    const end = neck.match(/(\d+) (\d+)$/)?.slice(1) ?? ['46', '10'];
    svg.append(draw('path', { d: `M4 15L${x0} ${y0}M${end[0]} ${end[1]}L60 15${BODY}` }));
  }
  svg.append(draw('path', { d, class: 'n' }));
  return svg;
}
