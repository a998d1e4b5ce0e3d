/** Findings for somebody at the bench: where, the line itself with the place marked, what is wrong, what to do. */
import type { CheckReport, ToldFinding } from '../told-findings.js';
import { lengthOf, wrapped } from './columns.js';
import type { Style } from './style.js';
import { inLine } from '../../wording/visible.js';
import { type Wording } from '../../wording/wording.js';
import { SEVERITIES, type Severity } from '../../checks/finding.js';
import { CAUTION_CODES } from '../../checks/cautions/caution-rules.js';
import { isTold, type Talk } from '../../checks/talk.js';

export function findingsAsText({ findings, files }: CheckReport, style: Style, talk: Talk): string {
  const told = findings.filter(({ severity }) => isTold(severity, talk));
  const blocks = told.map((finding) => findingAsText(finding, style));
  const { text } = style.wording;
  const foot = [
    ...leftOut(
      findings.filter((finding) => !told.includes(finding)),
      style.wording,
    ),
    ...(told.length > 0 ? [text('For what a finding means: bookmatch rules CODE')] : []),
  ].map((line) => `${style.dim(line)}\n`);
  return [...blocks, `${summaryOf(told, files, style)}\n${foot.join('')}`].join('\n');
}

/** What is not told, in one line: nothing is kept back in silence, and cautions are named as such. */
function leftOut(findings: readonly ToldFinding[], { say }: Wording): readonly string[] {
  const cautions = findings.filter(({ code }) => CAUTION_CODES.has(code)).length;
  if (findings.length === 0) return [];
  const more = cautions === 0 ? '' : cautions === 1 ? say`1 of them a caution` : say`${cautions} of them cautions`;
  const told = findings.length === 1 ? say`1 more` : say`${findings.length} more`;
  return [cautions === 0 ? say`${told} with --talk everything` : say`${told} with --talk everything, ${more}`];
}

export function findingAsText(finding: ToldFinding, style: Style): string {
  const { file, range, severity, code, message, related, remedies } = finding;
  const width = Math.min(Math.max(style.columns, 40), 100) - 2;
  const head = `${style.bold(`${inLine(file)}:${range.start.line}:${range.start.column}`)}  ${style.severity(severity, style.wording.text(severity))}  ${style.dim(code)}`;
  const lines = [
    head,
    ...excerpt(finding, style),
    ...wrapped(message, width).map((line) => `  ${line}`),
    ...related.flatMap((each) =>
      hanging(`${inLine(each.file)}:${each.range.start.line}: ${each.message}`, `${style.wording.text('see')} `, width),
    ),
    ...remedies.flatMap((remedy) => hanging(remedy, '→ ', width)),
  ];
  return `${lines.join('\n')}\n`;
}

function hanging(text: string, lead: string, width: number): string[] {
  return wrapped(text, width - lead.length - 2).map(
    (line, i) => `    ${i === 0 ? lead : ' '.repeat(lead.length)}${line}`,
  );
}

/** Of a very long line only this much is shown around the place. */
const EXCERPT = 92;

function excerpt({ line, range }: ToldFinding, style: Style): readonly string[] {
  if (line.trim() === '') return [];
  const start = Math.min(range.start.column - 1, line.length);
  const end = range.end.line > range.start.line ? line.trimEnd().length : Math.min(range.end.column - 1, line.length);
  const from = line.length <= EXCERPT ? 0 : Math.max(0, Math.min(start - 20, line.length - EXCERPT));
  const cut = line.slice(from, from + EXCERPT);
  const before = plain(line.slice(from, start));
  const marked = plain(line.slice(start, Math.min(Math.max(end, start + 1), from + EXCERPT)));
  const lead = from > 0 ? '…' : '';
  const number = String(range.start.line);
  const carets = '^'.repeat(Math.max(lengthOf(marked), 1));
  return [
    `  ${style.dim(`${number} |`)} ${lead}${plain(cut)}${from + EXCERPT < line.length ? '…' : ''}`,
    `  ${style.dim(`${' '.repeat(number.length)} |`)} ${' '.repeat(lengthOf(lead + before))}${carets}`,
  ];
}

/** Tabs and signs that a terminal would act upon become as many plain characters, so that the marks stay below their place. */
function plain(text: string): string {
  return inLine(text.replaceAll('\t', ' '));
}

function summaryOf(findings: readonly ToldFinding[], files: number, style: Style): string {
  const { say } = style.wording;
  if (findings.length === 0) return files === 1 ? say`No findings in 1 file.` : say`No findings in ${files} files.`;
  const said = SEVERITIES.flatMap((severity) => {
    const count = findings.filter((each) => each.severity === severity).length;
    return count === 0 ? [] : [style.severity(severity, countInWords(severity, count, style.wording))];
  }).join(', ');
  return files === 1 ? say`${said} in 1 file.` : say`${said} in ${files} files.`;
}

function countInWords(severity: Severity, count: number, { say }: Wording): string {
  switch (severity) {
    case 'error':
      return count === 1 ? say`1 error` : say`${count} errors`;
    case 'warning':
      return count === 1 ? say`1 warning` : say`${count} warnings`;
    case 'information':
      return count === 1 ? say`1 remark` : say`${count} remarks`;
    case 'hint':
      return count === 1 ? say`1 hint` : say`${count} hints`;
  }
}
