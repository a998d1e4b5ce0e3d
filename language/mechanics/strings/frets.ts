/** Fret places and string spacing. SI throughout. */
import { MechanicsError, between, notNegative, positive } from '../error.js';

/**
 * Distance (m) from the nut to fret n in equal temperament: L (1 − 2^(−n/12)). `scale` is the length nut to saddle
 * before compensation. Throws on a fret that is not a whole number from 0 to 36.
 */
export function fretPlace(scale: number, fret: number, notesPerOctave = 12): number {
  if (!Number.isInteger(fret) || fret < 0 || fret > 3 * notesPerOctave) {
    throw new MechanicsError('fret', 'A fret is a whole number from 0 up to three octaves.');
  }
  return positive('scale', scale) * (1 - 2 ** (-fret / between('notes per octave', notesPerOctave, 1, 100)));
}

/**
 * Centres (m, from the bass edge of the nut) of strings with even distances between centres, outer centres `margin`
 * (m) plus half a gauge from the edges; or with `gaps`, even clear gaps between strings of these gauges (m), bass
 * first, which looks and feels even to the player when gauges differ. Throws when the strings do not fit.
 */
export function nutSpacing(
  width: number,
  margin: number,
  gauges: readonly number[],
  rule: 'centres' | 'gaps',
): number[] {
  positive('nut width', width);
  notNegative('edge margin', margin);
  if (gauges.length < 2) throw new MechanicsError('strings', 'Spacing needs at least two strings.');
  const halves = gauges.map((gauge) => positive('string gauge', gauge) / 2);
  const first = margin + halves[0]!;
  const last = width - margin - halves[halves.length - 1]!;
  const inner = gauges.slice(1, -1).reduce((sum, gauge) => sum + gauge, 0);
  const gap = (last - first - halves[0]! - halves[halves.length - 1]! - inner) / (gauges.length - 1);
  if (gap <= 0) throw new MechanicsError('nut width', 'The strings do not fit on a nut of this width.');
  if (rule === 'centres') return gauges.map((_, i) => first + ((last - first) * i) / (gauges.length - 1));
  let at = first - halves[0]!;
  return gauges.map((gauge) => {
    const centre = at + gauge / 2;
    at += gauge + gap;
    return centre;
  });
}
