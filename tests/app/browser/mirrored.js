// Where the axis lies between points of each piece and its mirror image, in mm.
() => {
  const { paper } = room;
  const at = (path, s) => {
    const p = path.getPointAtLength(s);
    const m = paper.svg.getCTM().inverse().multiply(path.getCTM());
    return new DOMPoint(p.x, p.y).matrixTransform(m);
  };
  const others = [...paper.whole.layer.children];
  return paper.whole.rows.flat().map((code, i) => {
    const { g, edges } = paper.pieces.get(code);
    const one = g.querySelector('.cutout'), other = others[i].querySelector('.cutout');
    const pairs = [0, 0.2, 0.4, 0.6, 0.8].map((u) => [at(one, u * one.getTotalLength()), at(other, u * one.getTotalLength())]);
    const fold = [...edges.values()].find((e) => e.data.is === 'fold');
    return {
      code,
      axes: pairs.map(([p, q]) => (p.x + q.x) / 2),
      level: Math.max(...pairs.map(([p, q]) => Math.abs(p.y - q.y))),
      fold: fold ? at(fold.glow, 1).x : null,
    };
  });
}
