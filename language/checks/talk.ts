/** How much is said: what is wrong only, what is worth knowing too, or every remark. */
import { atLeast, type Finding, type Severity } from './finding.js';

export type Talk = 'quiet' | 'usual' | 'everything';

export const TALKS: readonly Talk[] = ['quiet', 'usual', 'everything'];

/** What is still told at each level, at a terminal or in a list. */
const LEAST: Readonly<Record<Talk, Severity>> = { quiet: 'warning', usual: 'information', everything: 'hint' };

export function isTold(severity: Severity, talk: Talk): boolean {
  return atLeast(severity, LEAST[talk]);
}

/**
 * For an editor, which marks hints in the text and leaves them out of its list: when everything is wanted they are
 * remarks like the others.
 */
export function inEditor(finding: Finding, talk: Talk): Finding | undefined {
  const { severity } = finding;
  if (talk === 'usual') return finding;
  if (talk === 'quiet') return isTold(severity, talk) ? finding : undefined;
  return severity === 'hint' && finding.tag === undefined ? { ...finding, severity: 'information' } : finding;
}
