/** A rule: one code, one idea, one page. Rules of a family live in one file; `rules.ts` lists them all. */
import { type Definition, DEFINITION_KINDS, type DefinitionKind, type Span } from '../facts/facts.js';
import { LIMITS } from '../facts/limits.js';
import type { Workshop } from '../recipes/workshop.js';
import type { Finding, Fix, Place, Related, Severity } from './finding.js';

export interface Rule {
  /** Stable, in the words of the trade: `too-many-changes`. */
  readonly code: string;
  readonly severity: Severity;
  /** One line for a list of rules. */
  readonly title: string;
  /** Why it matters to a maker: two or three sentences. */
  readonly reason: string;
  /** A text the rule speaks up about, and the same put right. Both are tests. */
  readonly bad: string;
  readonly good: string;
  /** Kinds of definition it looks at. */
  readonly of: readonly DefinitionKind[];
  readonly check: (definition: Definition, workshop: Workshop, report: Report) => void;
}

export const EVERY_KIND = DEFINITION_KINDS;

/** How a rule reports: the place defaults to the definition under check. */
export type Report = (span: Span, message: string, more?: More) => void;

export interface More {
  readonly related?: readonly Related[];
  readonly fixes?: readonly Fix[];
  readonly tag?: Finding['tag'];
  /** For the rare rule whose gravity depends on the case. */
  readonly severity?: Severity;
}

export function run(rule: Rule, definition: Definition, workshop: Workshop): readonly Finding[] {
  const findings: Finding[] = [];
  try {
    check(rule, definition, workshop, findings);
  } catch (error) {
    if (!(error instanceof Enough)) throw error;
    const last = findings.pop()!;
    const { say } = workshop.wording;
    const message = say`Here and further on there is more of the same: ${LIMITS.alike} are told, and the others when those are put right.`;
    findings.push({ ...last, message, related: [], fixes: [] });
  }
  return findings;
}

/** Thrown where a rule has said the same so often that nobody reads on, and finding out what to suggest takes long. */
class Enough extends Error {}

function check(rule: Rule, definition: Definition, workshop: Workshop, findings: Finding[]): void {
  rule.check(definition, workshop, (span, message, more = {}) => {
    const place: Place = { definition, span };
    findings.push({
      code: rule.code,
      severity: more.severity ?? rule.severity,
      message,
      place,
      related: more.related ?? [],
      fixes: more.fixes ?? [],
      tag: more.tag,
    });
    if (findings.length > LIMITS.alike) throw new Enough();
  });
}
