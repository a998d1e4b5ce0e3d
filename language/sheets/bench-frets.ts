/** The fret table: from the nut to each fret, not from one to the next, so that no error adds up. */
import { fretPlace } from '../mechanics/strings/frets.js';
import type { Workshop } from '../recipes/workshop.js';
import type { SheetCell, SheetSection } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';

/** Pairs of columns side by side. */
const SIDE_BY_SIDE = 4;

export function fretSection(workshop: Workshop, { evaluation }: SheetSubject): readonly SheetSection[] {
  const { text } = workshop.wording;
  const scale = evaluation.number('scale');
  const count = evaluation.number('frets.count');
  if (scale === undefined || count === undefined || !Number.isInteger(count) || count < 1 || count > 36) return [];
  const inch = workshop.settings().units === 'inch';
  const written = (metres: number) =>
    inch ? `${(metres / 0.0254).toFixed(3)} in` : `${(metres * 1000).toFixed(2)} mm`;
  const rows = Math.ceil(count / SIDE_BY_SIDE);
  return [
    {
      title: text('Frets, from the nut'),
      columns: Array.from({ length: SIDE_BY_SIDE }, () => [text('fret'), text('from the nut')]).flat(),
      rows: Array.from({ length: rows }, (_, row) =>
        Array.from({ length: SIDE_BY_SIDE }, (__, column): readonly SheetCell[] => {
          const fret = column * rows + row + 1;
          return fret > count ? ['', ''] : [String(fret), written(fretPlace(scale, fret))];
        }).flat(),
      ),
    },
  ];
}
