/** The page of each rule, as Markdown: what a finding links to. */
import type { Severity } from './finding.js';
import { PROBLEM_RULES, RULES, STALE_ACCEPTANCE } from './rules.js';
import { ENGLISH, type Wording } from '../wording/wording.js';

export interface RulePage {
  readonly code: string;
  readonly severity: Severity;
  readonly title: string;
  readonly reason: string;
  readonly bad: string;
  readonly good: string;
}

/** Every rule there is a page of, in the order in which findings are best read. */
export function rulePages(): readonly RulePage[] {
  return [
    ...Object.entries(PROBLEM_RULES).map(([code, rule]) => ({ code, ...rule })),
    ...RULES.map(pageOf),
    pageOf(STALE_ACCEPTANCE),
  ];
}

/** One page, or undefined for a code that does not exist. */
export function rulePage(code: string, wording: Wording = ENGLISH): string | undefined {
  const page = rulePages().find((one) => one.code === code);
  return page && rendered(page, wording);
}

function rendered({ code, severity, title, reason, bad, good }: RulePage, { text }: Wording): string {
  return [
    `# ${code}`,
    '',
    `**${text(title)}** (${text(severity)})`,
    '',
    text(reason),
    '',
    ...example(text('Speaks up:'), bad),
    ...example(text('Fine:'), good),
  ].join('\n');
}

function example(lead: string, text: string): readonly string[] {
  // Control characters cannot be shown on a page.
  const shown = text.replace(/(?!\n)\p{Cc}/gu, '\uFFFD');
  return shown === '' ? [] : [lead, '', '```bookmatch', shown, '```', ''];
}

function pageOf({ code, severity, title, reason, bad, good }: RulePage): RulePage {
  return { code, severity, title, reason, bad, good };
}
