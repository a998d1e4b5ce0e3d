/** How text looks on a terminal: colour where it is wanted, never as the only sign of anything. */
import { createColors } from 'picocolors';
import type { Severity } from '../../checks/finding.js';

export interface Style {
  readonly columns: number;
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly severity: (of: Severity, text: string) => string;
}

export function styleFor(io: { readonly colour: boolean; readonly columns: number }): Style {
  const colours = createColors(io.colour);
  const bySeverity = { error: colours.red, warning: colours.yellow, information: colours.cyan, hint: colours.dim };
  return {
    columns: io.columns,
    bold: colours.bold,
    dim: colours.dim,
    severity: (of, text) => bySeverity[of](text),
  };
}
