// What lies over something, is cut off or out of sight on a page, in words.
() => {
  const wrong = [], told = (e) => `${e.tagName} ${e.id || e.className}: ` +
    (e.getAttribute('aria-label') || e.textContent).trim().slice(0, 30);
  const wide = document.documentElement.scrollWidth - innerWidth;
  if (wide > 1) wrong.push(`the page is ${wide} px too wide`);
  const seen = [...document.querySelectorAll('button, a, input, select, h1, h2, h3, label, summary')]
    .filter((e) => e.checkVisibility({ visibilityProperty: true }) && !e.closest('[hidden], svg') && e.id !== 'handle' && !e.closest('.sr'));
  // what scrolls may be out of sight there, but never over something else
  const scroller = (e) => { for (let p = e.parentElement; p; p = p.parentElement) if (/auto|scroll/.test(getComputedStyle(p).overflow)) return p; return null; };
  const clip = (e, r) => { const s = scroller(e)?.getBoundingClientRect(); return s ? { left: Math.max(r.left, s.left), right: Math.min(r.right, s.right), top: Math.max(r.top, s.top), bottom: Math.min(r.bottom, s.bottom) } : r; };
  const boxes = seen.flatMap((e) => [...e.getClientRects()].map((r) => [e, clip(e, r)])).filter(([, r]) => r.right - r.left > 1 && r.bottom - r.top > 1);
  for (const [e, r] of boxes) {
    if (!scroller(e) && (r.right > innerWidth + 1 || r.left < -1)) wrong.push(`out of sight: ${told(e)}`);
    if (e.scrollWidth > e.clientWidth + 2 && /hidden|clip/.test(getComputedStyle(e).overflowX) && getComputedStyle(e).textOverflow !== 'ellipsis') wrong.push(`cut off: ${told(e)}`);
  }
  for (let i = 0; i < boxes.length; i++) for (let j = i + 1; j < boxes.length; j++) {
    const [a, r] = boxes[i], [b, s] = boxes[j];
    if (a === b || a.contains(b) || b.contains(a) || a.closest('.notes, .remark') !== b.closest('.notes, .remark')) continue;
    const w = Math.min(r.right, s.right) - Math.max(r.left, s.left), h = Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top);
    // words of neighbouring lines may touch by their padding
    if (w > 2 && h > 0.45 * Math.min(r.bottom - r.top, s.bottom - s.top)) wrong.push(`${told(a)} lies over ${told(b)}`);
  }
  return [...new Set(wrong)];
}
