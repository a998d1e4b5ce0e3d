/** Findings as workflow commands, which GitHub shows beside the lines of a pull request. */
import type { Severity } from '../../checks/finding.js';
import type { CheckReport } from '../told-findings.js';
import type { Wording } from '../../wording/wording.js';
import { type Escaped, forGitHub, together } from '../border.js';

export function findingsForGitHub({ findings }: CheckReport, { say, text: word }: Wording): Escaped {
  return together(
    findings.map(({ severity, code, message, file, range, remedies }) => {
      const place = {
        file,
        line: range.start.line,
        endLine: range.end.line,
        // Columns are understood only within one line.
        ...(range.start.line === range.end.line && { col: range.start.column, endColumn: range.end.column }),
        title: code,
      };
      const text = remedies.length > 0 ? `${message}\n${say`What to do: ${remedies.join(word('; or '))}.`}` : message;
      return forGitHub(COMMANDS[severity], place, text);
    }),
  );
}

const COMMANDS: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  information: 'notice',
  hint: 'notice',
};
