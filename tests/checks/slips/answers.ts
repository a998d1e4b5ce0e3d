/** What the tool makes of a slip: what it finds beyond what the folder gives anyway, and what each of its fixes leads to. */
import type { Finding } from '../../../language/checks/finding.js';
import { applied, check } from '../marked-text.js';
import { type Slip, textWith } from './corpus.js';

export interface Answer {
  readonly slip: Slip;
  /** Codes and messages of what is found beyond what stands in the folder, and in the line as it ought to be. */
  readonly found: readonly string[];
  /** The texts the fixes of these lead to, first fix first; of the finding a colleague would speak of before others. */
  readonly offered: readonly Offer[];
  readonly first: string | undefined;
  /** The first fix is put forward as the answer. */
  readonly isPreferred: boolean;
}

export interface Offer {
  readonly title: string;
  readonly text: string;
  /** In words, when it leaves the text as it was or leads to more findings than there were. */
  readonly harm: string | undefined;
}

type Known = ReadonlyMap<string, number>;

export function answers(all: readonly Slip[]): readonly Answer[] {
  const before = told(textWith('file'));
  return all.map((slip) => answer(slip, before));
}

function answer(slip: Slip, before: Known): Answer {
  const text = textWith(slip.where, slip.written);
  const checked = check(text);
  const usual = slip.mended === undefined ? before : told(textWith(slip.where, slip.mended));
  const own = checked.findings.filter((finding) => !usual.has(worded(finding)) && !before.has(worded(finding)));
  const ordered = [...own].sort((a, b) => Number(b.code === slip.code) - Number(a.code === slip.code));
  const graveBefore = grave(checked.findings);
  const offered = ordered.flatMap(({ fixes }) =>
    [...fixes]
      .sort((a, b) => Number(b.preferred ?? false) - Number(a.preferred ?? false))
      .map(({ title, edits }) => {
        const to = applied(checked, edits);
        return { title, text: to, harm: to === text ? 'leaves the text as it was' : worse(to, graveBefore) };
      }),
  );
  const isPreferred = ordered.some(({ fixes }) => fixes.some(({ preferred }) => preferred));
  return { slip, found: own.map(worded), offered, first: offered[0]?.text, isPreferred };
}

/** Errors and warnings: what is only worth knowing may well come to light once a line is read. */
function grave(findings: readonly Finding[]): readonly string[] {
  return findings.filter(({ severity }) => severity === 'error' || severity === 'warning').map(worded);
}

function worse(text: string, before: readonly string[]): string | undefined {
  const after = grave(check(text).findings);
  return after.length > before.length ? after.filter((one) => !before.includes(one)).join(' / ') : undefined;
}

function told(text: string): Known {
  return new Map(check(text).findings.map((finding) => [worded(finding), 1]));
}

function worded({ code, message }: Finding): string {
  return `${code}: ${message}`;
}
