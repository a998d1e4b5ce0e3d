/**
 * All findings of a definition or a file: what its text could not be read as, what the rules say, less what the maker
 * has accepted in place with a reason. An acceptance that accepts nothing is itself reported.
 */
import type { Fault } from '../recipes/shelf/barrier.js';
import { faultProblem } from '../recipes/shelf/fault-problem.js';
import { LIMITS } from '../facts/limits.js';
import type { AcceptStatement, Definition, Position, Problem, Span } from '../facts/facts.js';
import { concretePaths } from '../recipes/evaluation/effects.js';
import type { Query } from '../recipes/shelf/memo.js';
import type { Workshop } from '../recipes/workshop.js';
import { type Finding, type Fix, type Place, SEVERITIES, type Severity } from './finding.js';
import { oneOfEachSlip } from './layout/one-slip.js';
import { run } from './rule.js';
import { CODES, PROBLEM_RULES, RULES, STALE_ACCEPTANCE } from './rules.js';
import { type Wording } from '../wording/wording.js';

export class Checks {
  private readonly ofDefinition: Query<Definition, readonly Finding[]>;

  constructor(private readonly workshop: Workshop) {
    const { memo } = workshop.shelf;
    // Apart from the findings: whatever is asked about a definition has a part in it, and mostly nothing was thrown.
    const faults = memo.query('faults', (definition: Definition) => workshop.faultsOf(definition), {
      isBoundToKey: true,
      equal: (a, b) => a.length === 0 && b.length === 0,
    });
    const work = (definition: Definition) => guardedFindings(definition, workshop, (each) => faults.get(each));
    this.ofDefinition = memo.query('findings', work, { isBoundToKey: true });
  }

  /** Findings of one file, in the order of the text. */
  file(uri: string): readonly Finding[] {
    const facts = this.workshop.shelf.file(uri);
    if (!facts) return [];
    const all = [
      ...facts.problems.map((problem) => ofProblem(problem, { uri, span: problem.span }, this.workshop.wording)),
      ...facts.definitions.flatMap(({ definition }) => this.ofDefinition.get(definition)),
    ];
    return all.length > LIMITS.findings ? shortened(all, uri, this.workshop.wording) : all;
  }

  /** Only what the text itself could not be read as: findings in which no other file has a part. */
  text(uri: string): readonly Finding[] {
    const facts = this.workshop.shelf.file(uri);
    if (!facts) return [];
    const { wording } = this.workshop;
    const all = [
      ...facts.problems.map((problem) => ofProblem(problem, { uri, span: problem.span }, wording)),
      ...facts.definitions.flatMap(({ definition }) => {
        const found = definition.problems.map((each) => ofProblem(each, { definition, span: each.span }, wording));
        return found.filter((finding) => !isAccepted(finding, definition));
      }),
    ];
    return all.length > LIMITS.findings ? shortened(all, uri, wording) : all;
  }

  definition(definition: Definition): readonly Finding[] {
    return this.ofDefinition.get(definition);
  }

  /** The work that leads to the findings of a definition, in steps between which somebody else can be served. */
  *towards(definition: Definition): Generator<void> {
    if (definition.kind === 'recipe') {
      for (const part of partsOfWork(definition.name.text, this.workshop)) {
        try {
          part();
        } catch {
          // Whoever checks the definition meets it too, and tells it.
        }
        yield;
      }
    }
    this.ofDefinition.get(definition);
    yield;
  }
}

/** Quantities of one step: some milliseconds, even with sixty braces. */
const AT_ONCE = 16;

function* partsOfWork(recipe: string, workshop: Workshop): Iterable<() => void> {
  let paths: readonly string[] = [];
  yield () => {
    const evaluation = workshop.evaluation(recipe);
    paths = evaluation ? concretePaths(evaluation.derivations.all, evaluation) : [];
  };
  for (let from = 0; from < paths.length; from += AT_ONCE) {
    yield () => {
      for (const path of paths.slice(from, from + AT_ONCE)) workshop.evaluation(recipe)?.derived(path);
    };
  }
  yield () => void workshop.count(recipe);
}

/** Whatever is thrown, there are findings: at the least, that something was. */
function guardedFindings(definition: Definition, workshop: Workshop, faultsOf: FaultsOf): readonly Finding[] {
  try {
    return findingsOf(definition, workshop, faultsOf);
  } catch (error) {
    return [ofFaults([workshop.barrier.note({ doing: 'findings', error })], definition, workshop.wording)];
  }
}

type FaultsOf = (definition: Definition) => readonly Fault[];

function findingsOf(definition: Definition, workshop: Workshop, faultsOf: FaultsOf): readonly Finding[] {
  const problems = definition.problems.map((problem) =>
    ofProblem(problem, { definition, span: problem.span }, workshop.wording),
  );
  const faults: Fault[] = [];
  // A line that does not read is told as that, and nothing more is made of what was understood of it.
  const unread = definition.problems.filter(({ code }) => UNREAD.has(code)).map(({ span }) => span);
  const found = RULES.filter((rule) => rule.of.includes(definition.kind))
    .flatMap((rule) => {
      try {
        const { value, misled } = workshop.barrier.watch(() => run(rule, definition, workshop));
        // What a fault elsewhere led it to say may be false; that fault has a finding of its own.
        return misled ? [] : value;
      } catch (error) {
        faults.push(workshop.barrier.note({ doing: `rule ${rule.code}`, error }));
        return [];
      }
    })
    .filter(({ place: { span } }) => !unread.some((one) => one.start.line === span.start.line && overlap(one, span)));
  faults.push(...faultsOf(definition));
  const own = faults.length === 0 ? [] : [ofFaults(faults, definition, workshop.wording)];
  return accepted(definition, [...problems, ...own, ...oneOfEachSlip(found, definition)], workshop.wording);
}

/** Told of words of which nothing is to be made. */
const UNREAD: ReadonlySet<Problem['code']> = new Set([
  'unreadable-line',
  'too-long',
  'bad-number',
  'bad-date',
  'unknown-unit',
]);

/** One finding for all that was thrown about a definition, at its head. */
function ofFaults(faults: readonly Fault[], definition: Definition, wording: Wording): Finding {
  const problem = faultProblem(faults[0]!, definition.head, wording);
  return ofProblem(problem, { definition, span: problem.span }, wording);
}

/** The gravest first, and in place of the rest how many there are. */
function shortened(all: readonly Finding[], uri: string, { say }: Wording): readonly Finding[] {
  const graver = SEVERITIES.flatMap((severity) => all.filter((finding) => finding.severity === severity));
  const told = new Set(graver.slice(0, LIMITS.findings - 1));
  const left = all.length - told.size;
  const message = say`This file has ${all.length} findings; the ${told.size} gravest are told, ${left} are not.`;
  const start = { line: 0, character: 0 };
  const span: Span = { start, end: start };
  const rest = ofProblem({ code: 'too-long', message, span, suggestions: [] }, { uri, span }, { say });
  return [rest, ...all.filter((finding) => told.has(finding))];
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
  // A code that does not exist has a finding of its own.
  const idle = acceptances.filter(
    (accept) => CODES.includes(accept.code.text) && !findings.some((finding) => acceptsIt(accept, finding)),
  );
  return [
    ...findings.filter((finding) => !isAccepted(finding, definition)),
    ...idle.map((accept) => STALE_ACCEPTANCE.finding(definition, accept, wording)),
  ];
}

/** An error cannot be accepted away: it would leave a number wrong or a name without meaning. */
function isAccepted({ code, severity }: Finding, { statements }: Definition): boolean {
  return (
    severity !== 'error' &&
    statements.some((statement) => statement.kind === 'accept' && statement.code.text === code && hasReason(statement))
  );
}

function hasReason({ reason }: AcceptStatement): boolean {
  return reason !== undefined && reason.text.trim() !== '';
}

function acceptsIt(accept: AcceptStatement, finding: Finding): boolean {
  return accept.code.text === finding.code && finding.severity !== 'error';
}

function ofProblem(problem: Problem, place: Place, { say }: Pick<Wording, 'say'>): Finding {
  const severity: Severity = PROBLEM_RULES[problem.code].severity;
  return {
    code: problem.code,
    severity,
    message: problem.message,
    place,
    related: [],
    fixes: [
      ...closing(problem, place, say),
      ...problem.suggestions.map((text, i) => ({
        title: text === '' ? say`Remove it` : say`Write ${text}`,
        edits: [{ place, text }],
        preferred: i === 0,
      })),
    ],
  };
}

/** A block that is never closed ends, as it is read, where its definition does. */
function closing({ code }: Problem, place: Place, say: Wording['say']): readonly Fix[] {
  if (code !== 'unclosed-block' || !('definition' in place)) return [];
  const { definition } = place;
  const { end } = definition.span;
  const isOneLine = definition.span.start.line === end.line;
  const text = isOneLine ? ' }' : '\n}';
  return [
    {
      title: say`Close it at the end`,
      edits: [{ place: { definition, span: { start: end, end } }, text }],
      preferred: true,
    },
  ];
}
