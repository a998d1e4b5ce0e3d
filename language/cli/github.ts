/** Findings as workflow commands, which GitHub shows beside the lines of a pull request. */
import type { Severity } from '../checks/finding.js';
import type { CheckReport } from './told-findings.js';
import { type Style } from './text/style.js';

export function findingsForGitHub({ findings }: CheckReport, { wording: { say, text: word } }: Style): string {
  return findings
    .map(({ severity, code, message, file, range, remedies }) => {
      const place = {
        file,
        line: range.start.line,
        endLine: range.end.line,
        // Columns are understood only within one line.
        ...(range.start.line === range.end.line && { col: range.start.column, endColumn: range.end.column }),
        title: code,
      };
      const properties = Object.entries(place).map(([key, value]) => `${key}=${escapedProperty(String(value))}`);
      const text = remedies.length > 0 ? `${message}\n${say`What to do: ${remedies.join(word('; or '))}.`}` : message;
      return `::${COMMANDS[severity]} ${properties.join(',')}::${escaped(text)}\n`;
    })
    .join('');
}

const COMMANDS: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  information: 'notice',
  hint: 'notice',
};

function escaped(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function escapedProperty(text: string): string {
  return escaped(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
