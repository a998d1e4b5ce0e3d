/** Findings accepted in place: with a reason, for a code that exists, and only while there is something to accept. */
import { didYouMean } from '../quantities/suggest.js';
import type { AcceptStatement, Definition } from '../facts/facts.js';
import type { Finding, Fix } from './finding.js';
import { insertLine, remove, replace } from './mending.js';
import { suggestion } from './phrases.js';
import { EVERY_KIND, type Rule } from './rule.js';
import { sentences, type Wording } from '../wording/wording.js';

/**
 * Accepts a finding where it stands, the reason still to be written; until it is, the finding stays beside one that asks
 * for it. Nothing for an error, which would leave a number wrong, nor for what is said of acceptances themselves.
 */
export function acceptInPlace({ code, severity, place }: Finding, { say }: Wording): Fix | undefined {
  if (severity === 'error' || !('definition' in place) || OF_ACCEPTANCES.has(code)) return undefined;
  const { definition } = place;
  const before = definition.statements.find(({ kind }) => kind !== 'because');
  return {
    title: say`Accept ${code} here, with a reason`,
    edits: [insertLine(definition, `accept ${code} because ""`, before)],
  };
}

const OF_ACCEPTANCES: ReadonlySet<string> = new Set([
  'acceptance-without-reason',
  'acceptance-unknown-code',
  'stale-acceptance',
]);

export const ACCEPTANCE_WITHOUT_REASON: Rule = {
  code: 'acceptance-without-reason',
  severity: 'warning',
  title: 'A finding accepted without saying why',
  reason:
    'A finding is silenced for a reason, and the reason is what the next reader needs. Without one the finding stays.',
  bad: `model tarn { top.thickness: 4.4 mm  accept implausible }`,
  good: `model tarn { top.thickness: 4.4 mm  accept implausible because "A laminated top." }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const statement of definition.statements) {
      if (statement.kind !== 'accept' || (statement.reason && statement.reason.text.trim() !== '')) continue;
      report(
        statement.span,
        say`Say why: \`accept ${statement.code.text} because "…"\`. Until then the finding stays.`,
        {
          fixes: [
            {
              title: say`Add \`because\``,
              edits: [replace(definition, statement.span, `accept ${statement.code.text} because ""`)],
            },
          ],
        },
      );
    }
  },
};

export function acceptanceOfUnknownCode(codes: () => readonly string[]): Rule {
  return {
    code: 'acceptance-unknown-code',
    severity: 'warning',
    title: 'An acceptance of a finding that does not exist',
    reason: 'Findings are accepted by their code. A code nothing has silences nothing.',
    bad: `model tarn { top.thickness: 4.4 mm  accept implausable because "A laminated top." }`,
    good: `model tarn { top.thickness: 4.4 mm  accept implausible because "A laminated top." }`,
    of: EVERY_KIND,
    check(definition, workshop, report) {
      const { say } = workshop.wording;
      for (const statement of definition.statements) {
        if (statement.kind !== 'accept' || codes().includes(statement.code.text)) continue;
        const near = didYouMean(statement.code.text, codes());
        report(
          statement.code.span,
          sentences(say`No finding is called ${statement.code.text}.`, suggestion(near, workshop.wording)),
          {
            fixes: near.map((text, i) => ({
              title: say`Write ${text}`,
              edits: [replace(definition, statement.code.span, text)],
              preferred: i === 0,
            })),
          },
        );
      }
    },
  };
}

/** Reported by `check.ts`, which alone knows what a definition's other findings are. */
export const STALE_ACCEPTANCE = {
  code: 'stale-acceptance',
  severity: 'information',
  title: 'An acceptance with nothing left to accept',
  reason: 'The finding it silenced is gone. Left standing, it would hide the next one.',
  bad: `model tarn { top.thickness: 2.8 mm  accept implausible because "A laminated top." }`,
  good: `model tarn { top.thickness: 2.8 mm }`,
  finding(definition: Definition, accept: AcceptStatement, { say }: Wording): Finding {
    return {
      code: 'stale-acceptance',
      severity: 'information',
      message: say`There is no ${accept.code.text} here any more to accept.`,
      place: { definition, span: accept.span },
      related: [],
      fixes: [{ title: say`Take the line out`, edits: [remove(definition, accept)], preferred: true }],
      tag: 'unnecessary',
    };
  },
} as const;
