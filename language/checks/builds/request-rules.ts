/** Requests of a client in the middle of a build: what is still free, costly or impossible, and what it does to the trial. */
import { type Freeze, type Property, STAGES } from '../../catalogue/property.js';
import { effectsBetween, isDiscernible } from '../../recipes/evaluation/effects.js';
import type { Definition, RequestStatement, Span, Value, WithStatement } from '../../facts/facts.js';
import { type Held, isWithin } from '../../recipes/instrument/instrument.js';
import { stageReached } from '../../recipes/builds/stage-reached.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Written } from '../../recipes/instrument/written.js';
import type { Wording } from '../../wording/wording.js';
import type { Rule } from '../rule.js';
import { allStatements, propertiesOf } from '../../recipes/instrument/values.js';

const ORDER = `model tarn { scale: 645 mm  nut.width: 44.5 mm  top.thickness: 2.85 mm }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.65 mm }
`;

export const REQUEST_TOO_LATE: Rule = {
  code: 'request-too-late',
  severity: 'warning',
  title: 'A request that can no longer be met',
  reason:
    'Each part has a stage after which it cannot be changed without making it again: a slotted fingerboard has its scale. Better said while the client is still on the telephone.',
  bad: `${ORDER}order c-07 of tarn-2 { reached: setup  request 2026-06-12 { scale: 610 mm } }`,
  good: `${ORDER}order c-07 of tarn-2 { reached: wood  request 2026-06-12 { scale: 610 mm } }`,
  of: ['order'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { path, span, stage, frozen } of asked(definition, workshop)) {
      if (frozen.impossible === undefined || stage < indexOf(frozen.impossible)) continue;
      report(
        span,
        say`Too late for ${path}: the ${stageName(STAGES[stage], workshop.wording)} stage is done, and after the ${stageName(frozen.impossible, workshop.wording)} stage it cannot be changed without making the part again.`,
      );
    }
  },
};

export const REQUEST_COSTLY: Rule = {
  code: 'request-costly',
  severity: 'information',
  title: 'A request that means work done twice',
  reason:
    'It can still be done, but something finished must be undone first. Price and date should say so, and both sides sign.',
  bad: `${ORDER}order c-07 of tarn-2 { reached: neck  request 2026-04-28 { nut.width: 46 mm } }`,
  good: `${ORDER}order c-07 of tarn-2 { reached: bracing  request 2026-04-28 { nut.width: 46 mm } }`,
  of: ['order'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { path, span, stage, frozen } of asked(definition, workshop)) {
      if (frozen.costly === undefined || stage < indexOf(frozen.costly)) continue;
      if (frozen.impossible !== undefined && stage >= indexOf(frozen.impossible)) continue;
      report(
        span,
        say`${path} can still be changed, but it means work done twice: the ${stageName(STAGES[stage], workshop.wording)} stage is done. Agree on price and date.`,
      );
    }
  },
};

export const REQUEST_BREAKS_TRIAL: Rule = {
  code: 'request-breaks-trial',
  severity: 'information',
  title: 'A request that spoils the trial',
  reason:
    'This guitar was to show what one change does. With the request in it as well, nobody can say which of them was heard; its build should not speak for the change.',
  bad: `${ORDER}order c-07 of tarn-2 { reached: bracing  request 2026-04-28 { add cutaway { kind: venetian  depth: 65 mm } } }`,
  good: `${ORDER}order c-07 of tarn-2 { reached: bracing  request 2026-04-28 { finish.sheen: satin } }`,
  of: ['order'],
  check(definition, workshop, report) {
    const { say, some } = workshop.wording;
    const recipe = definition.relation && workshop.instrument(definition.relation.target.text);
    if (!recipe) return;
    const { variables, total } = workshop.count(recipe.name);
    const trial = variables
      .filter(({ verdict }) => verdict === 'counted')
      .map(({ variable: { label } }) => (label.startsWith('with ') ? say`the package ${label.slice(5)}` : label));
    if (total === 0) return;
    for (const [request, lines] of byRequest(definition, workshop)) {
      const counted = new Set(lines.filter((one) => isCounted(one, workshop)).map((one) => topOf(one, workshop)));
      const others = lines.filter((one) => !isCounted(one, workshop) && one.property);
      if (others.length > 0 && matters(others, recipe.values, recipe.name, definition, workshop)) {
        for (const one of others) counted.add(topOf(one, workshop));
      }
      if (counted.size === 0) continue;
      report(
        headOf(request),
        say`This guitar was to show what ${some(trial)} does: ${some([...counted])} would be heard as well. Mark the build \`attribution: no\`.`,
      );
    }
  },
};

interface Asked {
  readonly path: string;
  readonly span: Span;
  /** Number of the last stage done. */
  readonly stage: number;
  readonly frozen: Pick<Freeze, 'costly' | 'impossible'>;
}

/** Each thing asked for that some stage freezes. A part stands for all that is said of it. */
function asked(definition: Definition, workshop: Workshop): readonly Asked[] {
  const stage = stageReached(definition, workshop);
  if (stage < 0) return [];
  const all = new Map<string, Asked>();
  for (const [, lines] of byRequest(definition, workshop)) {
    for (const one of lines) {
      const { property, statement, path: written, taken } = one;
      if (!property?.freeze) continue;
      const path = topOf(one, workshop);
      const own = statement.kind === 'property' && path === one.canonical ? written.span : statement.span;
      const span = taken?.span ?? own;
      const frozen = frozenFor(property, one, definition, workshop);
      const key = `${span.start.line} ${path}`;
      const before = all.get(key);
      if (!before || isSooner(frozen, before.frozen)) all.set(key, { path, span, stage, frozen });
    }
  }
  return [...all.values()];
}

function isSooner(a: Asked['frozen'], b: Asked['frozen']): boolean {
  const [first, second] = [indexOf(a.impossible), indexOf(b.impossible)];
  return first < second || (first === second && indexOf(a.costly) < indexOf(b.costly));
}

/** What stays open longer in one direction is judged in that direction. */
function frozenFor(
  property: Property,
  { canonical, values }: Written,
  definition: Definition,
  workshop: Workshop,
): Asked['frozen'] {
  const { freeze } = property;
  if (!freeze?.easier) return freeze ?? {};
  const now = definition.relation && workshop.instrument(definition.relation.target.text)?.values.get(canonical)?.value;
  const then = values[values.length - 1]?.value;
  if (now?.kind !== 'quantity' || then?.kind !== 'quantity') return freeze;
  const way = then.quantity.si < now.quantity.si ? 'smaller' : 'larger';
  return way === freeze.easier.way ? freeze.easier : freeze;
}

/** A line of a request, or of appointments it takes up: those are told of where they are taken up. */
type Line = Written & { readonly taken?: WithStatement };

/** What each request asks for, line by line. One that was declined or taken back asks for nothing any more. */
function byRequest(definition: Definition, workshop: Workshop): ReadonlyMap<RequestStatement, readonly Line[]> {
  const requests = new Map<RequestStatement, Line[]>();
  const add = (request: RequestStatement, line: Line) => {
    if (line.role !== 'value' || line.property?.where.includes('recipe') !== true || isClosed(request)) return;
    const lines = requests.get(request);
    if (lines) lines.push(line);
    else requests.set(request, [line]);
  };
  for (const one of workshop.written(definition)) {
    if (one.occasion?.kind !== 'request') continue;
    add(one.occasion, one);
    if (one.statement.kind === 'drop') for (const line of dropped(one, definition, workshop)) add(one.occasion, line);
  }
  for (const request of definition.statements) {
    if (request.kind !== 'request') continue;
    for (const taken of allStatements(request.statements)) {
      const appointments = taken.kind === 'with' && workshop.shelf.find('appointments', taken.name.text);
      if (taken.kind !== 'with' || !appointments) continue;
      for (const one of workshop.written(appointments)) {
        if (workshop.catalogue.isPackaged(one.canonical)) add(request, { ...one, taken });
      }
    }
  }
  return requests;
}

function isClosed({ statements }: RequestStatement): boolean {
  return [...propertiesOf(statements)].some(
    ({ statement: { path, value } }) =>
      path.text === 'answer' && value.kind === 'name' && (value.name === 'declined' || value.name === 'withdrawn'),
  );
}

/** What goes with a part that is left out. */
function dropped(one: Written, definition: Definition, workshop: Workshop): readonly Line[] {
  const recipe = definition.relation && workshop.instrument(definition.relation.target.text);
  const gone = [...(recipe?.values.keys() ?? [])].filter((path) => isWithin(path, one.canonical));
  return gone.map((path) => ({
    ...one,
    role: 'value',
    canonical: path,
    within: one.canonical,
    property: workshop.catalogue.property(path, 'recipe'),
  }));
}

function isCounted({ canonical }: Written, workshop: Workshop): boolean {
  const of = workshop.classOf(canonical);
  return of === 'voicing' || of === 'body';
}

/** Whether setup, options and appointments asked for come to something that can be told apart. */
function matters(
  lines: readonly Written[],
  values: ReadonlyMap<string, Held>,
  recipe: string,
  definition: Definition,
  workshop: Workshop,
): boolean {
  const before = workshop.evaluation(recipe);
  if (!before) return false;
  const next = new Map(values);
  for (const { canonical, values: stated, statement } of lines) {
    const value: Value | undefined = stated[stated.length - 1]?.value;
    if (value)
      next.set(canonical, { path: canonical, value, from: { definition, span: statement.span }, via: 'stated' });
  }
  return effectsBetween(before, workshop.evaluate(next)).some(isDiscernible);
}

/** The part for what belongs to one that is added, left out or packaged, the path itself otherwise. */
function topOf({ canonical, within, taken }: Line, { catalogue }: Workshop): string {
  if (within !== '') return within.split('.')[0] ?? canonical;
  return taken ? (catalogue.partOf(canonical)?.split('.')[0] ?? canonical) : canonical;
}

/** In the words of the trade: `neck angle`. */
function stageName(stage = '', { text }: Wording): string {
  return text(stage.replaceAll('-', ' '));
}

function indexOf(stage: string | undefined): number {
  const at = STAGES.findIndex((one) => one === stage);
  return stage === undefined ? STAGES.length : at;
}

function headOf(request: RequestStatement): Span {
  return { start: request.span.start, end: request.date?.span.end ?? request.span.start };
}
