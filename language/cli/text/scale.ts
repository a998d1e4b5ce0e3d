/** A difference beside what it takes to tell it: a band and a dot, always on the same scale. */

const HALF = 6;
/** Cells of the band to either side: it reaches as far as what comes about anyway. */
const BAND = 2;

/** `····──┼──··●·`: within the band nobody could tell. A dot beyond the scale becomes an arrow at its end. */
export function scaleOf(difference: number, discernible: number): string {
  const cells: string[] = Array.from({ length: 2 * HALF + 1 }, (_, i) => (Math.abs(i - HALF) <= BAND ? '─' : '·'));
  cells[HALF] = '┼';
  const steps = discernible === 0 ? Math.sign(difference) * Infinity : (difference / discernible) * BAND;
  if (Math.abs(steps) > HALF) {
    cells[steps < 0 ? 0 : 2 * HALF] = steps < 0 ? '◂' : '▸';
  } else {
    // What lies beyond the band is drawn beyond it, whatever rounding says.
    const cell = Math.abs(steps) > BAND ? Math.max(Math.round(Math.abs(steps)), BAND + 1) : Math.round(Math.abs(steps));
    cells[HALF + Math.sign(steps) * cell] = '●';
  }
  return cells.join('');
}
