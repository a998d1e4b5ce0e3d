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

export function styleFor(io: Pick<Io, 'colour' | 'columns' | 'wording'>): Style {
  const colours = createColors(io.colour);
  const bySeverity = { error: colours.red, warning: colours.yellow, information: colours.cyan, hint: colours.dim };
  return {
    wording: io.wording,
    columns: io.columns,
    bold: colours.bold,
    dim: colours.dim,
    severity: (of, text) => bySeverity[of](text),
  };
}
