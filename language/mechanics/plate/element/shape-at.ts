/** Bilinear shape functions of a quadrilateral at a point; undefined when it lies outside. */
export function shapeAt(x: Float64Array, y: Float64Array, n: Int32Array, px: number, py: number): number[] | undefined {
  const corners = Array.from(n, (node) => [x[node]!, y[node]!] as const);
  const reach = Math.max(...corners.map(([cx, cy]) => Math.hypot(cx - corners[0]![0], cy - corners[0]![1])));
  if (Math.hypot(px - corners[0]![0], py - corners[0]![1]) > 2 * reach) return undefined;
  let xi = 0;
  let eta = 0;
  for (let step = 0; step < 12; step++) {
    const shape = [
      ((1 - xi) * (1 - eta)) / 4,
      ((1 + xi) * (1 - eta)) / 4,
      ((1 + xi) * (1 + eta)) / 4,
      ((1 - xi) * (1 + eta)) / 4,
    ];
    const dXi = [-(1 - eta) / 4, (1 - eta) / 4, (1 + eta) / 4, -(1 + eta) / 4];
    const dEta = [-(1 - xi) / 4, -(1 + xi) / 4, (1 + xi) / 4, (1 - xi) / 4];
    const sum = (weights: readonly number[], axis: 0 | 1): number =>
      weights.reduce((total, weight, k) => total + weight * corners[k]![axis], 0);
    const rx = px - sum(shape, 0);
    const ry = py - sum(shape, 1);
    const a = sum(dXi, 0);
    const b = sum(dEta, 0);
    const c = sum(dXi, 1);
    const d = sum(dEta, 1);
    const det = a * d - b * c;
    if (Math.hypot(rx, ry) < 1e-12 + 1e-9 * reach) {
      const slack = 1 + 1e-6;
      return Math.abs(xi) <= slack && Math.abs(eta) <= slack ? shape : undefined;
    }
    xi += (d * rx - b * ry) / det;
    eta += (a * ry - c * rx) / det;
    if (!(Math.abs(xi) < 4 && Math.abs(eta) < 4)) return undefined;
  }
  return undefined;
}
