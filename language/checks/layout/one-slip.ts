/** One slip, one finding: a size that is both unusual and does not fit where it lies is told as what says more. */
import type { Definition, Span } from '../../facts/facts.js';
import type { Finding } from '../finding.js';

const LAYOUT: ReadonlySet<string> = new Set([
  'off-the-plate',
  'over-the-hole',
  'bridge-off-the-scale',
  'bridge-plate-under-brace',
  'cutaway-into-neck',
]);

/** A value that is usual in another unit is asked about as that; any other unusual one that does not fit is told as not fitting. */
export function oneOfEachSlip(findings: readonly Finding[], definition: Definition): readonly Finding[] {
  const at = (finding: Finding) => statementAt(definition, finding.place.span);
  const unusual = findings.filter(({ code }) => code === 'implausible');
  const ill = findings.filter(({ code }) => LAYOUT.has(code));
  if (unusual.length === 0 || ill.length === 0) return findings;
  const told = new Set(
    unusual.filter(({ fixes }) => fixes.length === 0).filter((one) => ill.some((other) => at(other) === at(one))),
  );
  const slips = unusual.filter(({ fixes }) => fixes.length > 0).map(at);
  return findings.filter((finding) => !told.has(finding) && !(LAYOUT.has(finding.code) && slips.includes(at(finding))));
}

/** Where the statement around a place begins: findings of one statement are findings of one slip. */
function statementAt({ statements }: Definition, { start }: Span): string {
  let found = start;
  const look = (list: Definition['statements']): void => {
    for (const statement of list) {
      if (!holds(statement.span, start)) continue;
      if ('statements' in statement) look(statement.statements);
      else found = statement.span.start;
    }
  };
  look(statements);
  return `${found.line}:${found.character}`;
}

function holds({ start, end }: Span, { line, character }: Span['start']): boolean {
  const after = line > start.line || (line === start.line && character >= start.character);
  return after && (line < end.line || (line === end.line && character <= end.character));
}
