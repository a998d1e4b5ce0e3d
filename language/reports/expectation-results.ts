/** What recipes expect of themselves, as tests: which hold, which are missed, and which cannot be tested yet. */
import { shown, writeValue } from '../checks/phrases.js';
import type { Finding } from '../checks/finding.js';
import type { Definition, Span } from '../facts/facts.js';
import type { Expectation } from '../recipes/instrument/expectations.js';
import { contains, type Desk, shifted } from '../checks/desk.js';

export interface RecipeTests {
  readonly recipe: string;
  readonly uri: string;
  /** The name of the recipe. */
  readonly range: Span;
  /** One for each `expect`, in the order written. */
  readonly tests: readonly ExpectationTest[];
}

export interface ExpectationTest {
  /** As written: `top.mass: below 165 g`. */
  readonly label: string;
  readonly range: Span;
  /** `working`: the solver is still at it. `faulty`: the line itself cannot be tested. */
  readonly outcome: 'passed' | 'failed' | 'unknown' | 'working' | 'faulty';
  /** What it comes to, or why that cannot be said. */
  readonly message: string;
}

/** Every recipe with an `expect`, file by file. */
export function expectationTests(desk: Desk): readonly RecipeTests[] {
  return desk.shelf.uris().flatMap((uri) =>
    (desk.shelf.file(uri)?.definitions ?? []).flatMap(({ definition, line }) => {
      const recipe = definition.name.text;
      // Of two recipes of one name only the first counts, and of the other nothing is computed.
      if (definition.kind !== 'recipe' || desk.shelf.find('recipe', recipe) !== definition) return [];
      const tests = desk.workshop
        .expectations(recipe)
        .map((expectation) => testOf(desk, uri, definition, expectation, line));
      return tests.length > 0 ? [{ recipe, uri, range: shifted(definition.name.span, line), tests }] : [];
    }),
  );
}

function testOf(
  desk: Desk,
  uri: string,
  definition: Definition,
  expectation: Expectation,
  line: number,
): ExpectationTest {
  const { statement, derived } = expectation;
  // What the line itself is found to be wrong with comes first: a bound in the wrong unit compares nothing.
  const told = desk.checks.file(uri).filter(({ place }) => isAt(place, definition, statement.span));
  const fault = told.find(({ severity }) => severity === 'error');
  const outcome = fault ? 'faulty' : outcomeOf(expectation);
  const value = derived?.known ? shown(derived.si, derived.quantity) : undefined;
  const { say, text } = desk.workshop.wording;
  const otherwise = value === undefined ? text('It is not known yet.') : say`It comes to ${value}.`;
  return {
    label: `${statement.quantity.text}: ${writeValue(statement.value)}`,
    range: shifted(statement.span, line),
    outcome,
    message: (fault ?? told.find(({ code }) => code.startsWith('expectation-')))?.message ?? otherwise,
  };
}

function outcomeOf({ outcome, derived }: Expectation): ExpectationTest['outcome'] {
  if (outcome === 'not-a-quantity' || outcome === 'not-a-bound') return 'faulty';
  if (outcome === 'met') return 'passed';
  if (outcome === 'missed') return 'failed';
  return derived && !derived.known && derived.pending ? 'working' : 'unknown';
}

function isAt(place: Finding['place'], definition: Definition, span: Span): boolean {
  return 'definition' in place && place.definition === definition && contains(span, place.span.start);
}
