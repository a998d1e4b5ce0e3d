/** How text looks on a terminal: colour where it is wanted, never as the only sign of anything. */
import { createColors } from 'picocolors';
import type { Severity } from '../../checks/finding.js';
import type { Io } from '../io.js';
import type { Wording } from '../../wording/wording.js';

export interface Style {
  readonly wording: Wording;
  readonly columns: number;
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly severity: (of: Severity, text: string) => string;
}

export function styleFor(io: Pick<Io, 'colour' | 'columns' | 'wording' | 'ink'>): Style {
  const colours = createColors(io.colour);
  // Marked as ours: without the ink behind it the border takes an escape sign for something a file says.
  const inked = (paint: (text: string) => string) => {
    const [before = '', after = ''] = paint('|').split('|');
    return (text: string) => ours(before) + text + ours(after);
  };
  const ours = (codes: string) => codes.replaceAll('\u001B', `\u001B${io.ink}`);
  const dim = inked(colours.dim);
  const bySeverity = {
    error: inked(colours.red),
    warning: inked(colours.yellow),
    information: inked(colours.cyan),
    hint: dim,
  };
  return {
    wording: io.wording,
    columns: io.columns,
    bold: inked(colours.bold),
    dim,
    severity: (of, text) => bySeverity[of](text),
  };
}
