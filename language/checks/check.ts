/**
 * All findings of a definition or a file: what its text could not be read as, what the rules say, less what the maker
 * has accepted in place with a reason. An acceptance that accepts nothing is itself reported.
 */
import type { AcceptStatement, Definition, Position, Problem, Span } from '../facts/facts.js';
import type { Query } from '../recipes/shelf/memo.js';
import type { Workshop } from '../recipes/workshop.js';
import type { Finding, Place, Severity } from './finding.js';
import { run } from './rule.js';
import { CODES, PROBLEM_RULES, RULES, STALE_ACCEPTANCE } from './rules.js';
import { type Wording } from '../wording/wording.js';

export class Checks {
  private readonly ofDefinition: Query<Definition, readonly Finding[]>;

  constructor(private readonly workshop: Workshop) {
    this.ofDefinition = workshop.shelf.memo.query('findings', (definition) => findingsOf(definition, workshop), {
      isBoundToKey: true,
    });
  }

  /** Findings of one file, in the order of the text. */
  file(uri: string): readonly Finding[] {
    const facts = this.workshop.shelf.file(uri);
    if (!facts) return [];
    return [
      ...facts.problems.map((problem) => ofProblem(problem, { uri, span: problem.span }, this.workshop.wording)),
      ...facts.definitions.flatMap(({ definition }) => this.ofDefinition.get(definition)),
    ];
  }

  definition(definition: Definition): readonly Finding[] {
    return this.ofDefinition.get(definition);
  }
}

function findingsOf(definition: Definition, workshop: Workshop): readonly Finding[] {
  const problems = definition.problems.map((problem) =>
    ofProblem(problem, { definition, span: problem.span }, workshop.wording),
  );
  // A line that does not read is told as that, and nothing more is made of what was understood of it.
  const unread = definition.problems.filter(({ code }) => code === 'unreadable-line').map(({ span }) => span);
  const found = RULES.filter((rule) => rule.of.includes(definition.kind))
    .flatMap((rule) => run(rule, definition, workshop))
    .filter(({ place: { span } }) => !unread.some((one) => one.start.line === span.start.line && overlap(one, span)));
  return accepted(definition, [...problems, ...found], workshop.wording);
}

function overlap(a: Span, b: Span): boolean {
  return isBefore(a.start, b.end) && isBefore(b.start, a.end);
}

function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}

function accepted(definition: Definition, findings: readonly Finding[], wording: Wording): readonly Finding[] {
  const acceptances = definition.statements.filter((statement) => statement.kind === 'accept');
  if (acceptances.length === 0) return findings;
  // An error cannot be accepted away: it would leave a number wrong or a name without meaning.
  const isAccepted = (finding: Finding) =>
    finding.severity !== 'error' &&
    acceptances.some((accept) => accept.code.text === finding.code && hasReason(accept));
  // A code that does not exist has a finding of its own.
  const idle = acceptances.filter(
    (accept) => CODES.includes(accept.code.text) && !findings.some((finding) => acceptsIt(accept, finding)),
  );
  return [
    ...findings.filter((finding) => !isAccepted(finding)),
    ...idle.map((accept) => STALE_ACCEPTANCE.finding(definition, accept, wording)),
  ];
}

function hasReason({ reason }: AcceptStatement): boolean {
  return reason !== undefined && reason.text.trim() !== '';
}

function acceptsIt(accept: AcceptStatement, finding: Finding): boolean {
  return accept.code.text === finding.code && finding.severity !== 'error';
}

function ofProblem(problem: Problem, place: Place, { say }: Wording): Finding {
  const severity: Severity = PROBLEM_RULES[problem.code].severity;
  return {
    code: problem.code,
    severity,
    message: problem.message,
    place,
    related: [],
    fixes: problem.suggestions.map((text, i) => ({
      title: text === '' ? say`Remove it` : say`Write ${text}`,
      edits: [{ place, text }],
      preferred: i === 0,
    })),
  };
}
