/** Rings of names other than those of recipes, and lines that are too long to be followed. */
import type { Definition, Span } from '../../facts/facts.js';
import { LIMITS } from '../../facts/limits.js';
import { ringThrough } from '../../recipes/shelf/name-ring.js';
import { takenUpBy } from '../../recipes/instrument/packages.js';
import { allStatements } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import { isInForce } from '../in-force.js';
import type { Rule } from '../rule.js';

export const NAME_RING: Rule = {
  code: 'name-ring',
  severity: 'error',
  title: 'Woods or appointments that lead back to themselves',
  reason:
    'A wood is said to be a species, if need be through other woods, and must get there. A set of appointments may take up others, but none can hold itself.',
  bad: `wood spruce-12 is spruce-13 { density: 421 kg/m³ }
wood spruce-13 is spruce-12 { density: 424 kg/m³ }`,
  good: `wood spruce-12 is sitka-spruce { density: 421 kg/m³ }
wood spruce-13 is spruce-12 { density: 424 kg/m³ }`,
  of: ['wood', 'appointments'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    if (!isInForce(definition, workshop)) return;
    const name = definition.name.text;
    const ring = ringThrough(name, (at) => namesWithin(workshop.shelf.find(definition.kind, at)));
    if (!ring) return;
    const round = ring.length > SHOWN ? [...ring.slice(0, SHOWN), '…', name] : [...ring, name];
    const span = whereNamed(definition, ring[1] ?? name);
    if (ring.length > 1) {
      const message =
        definition.kind === 'wood'
          ? say`These woods go round in a ring: ${round.join(' is ')}. One of them must be a species.`
          : say`These appointments go round in a ring: ${round.join(' with ')}. Each is taken up once; leave one of them out.`;
      report(span, message);
    } else if (definition.kind === 'wood') report(span, say`${name} cannot be its own species.`);
    else report(span, say`${name} cannot take up itself.`);
  },
};

export const LINE_TOO_LONG: Rule = {
  code: 'line-too-long',
  severity: 'error',
  title: 'More recipes in a line than are followed',
  reason:
    'From a recipe back to the first of its line every parent is read. So many are followed, more than a working life of instruments; what comes after is read as if it had no parent.',
  // Too long for a page.
  bad: '',
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    if (!isInForce(definition, workshop) || !definition.relation) return;
    if (workshop.lineage(definition.name.text).trouble?.kind !== 'long') return;
    report(
      definition.relation.target.span,
      workshop.wording
        .say`This recipe has more than ${LIMITS.generations} recipes before it, or they come round to themselves; so many are not followed. Start a new line from a model.`,
    );
  },
};

const SHOWN = 6;

function namesWithin(definition: Definition | undefined): readonly string[] {
  if (!definition) return [];
  if (definition.kind === 'appointments') return takenUpBy(definition);
  return definition.relation ? [definition.relation.target.text] : [];
}

function whereNamed({ statements, relation, name }: Definition, other: string): Span {
  for (const one of allStatements(statements)) {
    if (one.kind === 'with' && one.name.text === other) return one.name.span;
  }
  return relation?.target.span ?? name.span;
}

/** Whether something is wrong with the line a recipe stands in, so that nothing is to be made of what it lacks. */
export function isLineBroken(recipe: Definition, workshop: Workshop): boolean {
  return recipe.kind === 'recipe' && workshop.lineage(recipe.name.text).trouble !== undefined;
}
