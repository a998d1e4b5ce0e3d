/** Parents: that each recipe and build descends from something, and that no recipe descends from itself. */
import { didYouMean } from '../../quantities/suggest.js';
import type { Definition, DefinitionKind } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Fix } from '../finding.js';
import { isInForce } from '../in-force.js';
import { insertAt, replace } from '../mending.js';
import type { Rule } from '../rule.js';
import { sentences } from '../../wording/wording.js';
import { suggestion } from '../phrases.js';

export const MISSING_PARENT: Rule = {
  code: 'missing-parent',
  severity: 'error',
  title: 'A recipe whose parent or model is not there',
  reason: 'A recipe says only what differs. Without the parent it differs from, nothing of the instrument is known.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-11 { }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const { relation } = definition;
    if (!relation || relation.target.text === '') return;
    const kind: DefinitionKind = relation.word === 'for' ? 'model' : 'recipe';
    const name = relation.target.text;
    if (workshop.shelf.kindsOf(name).some((known) => known === 'recipe' || known === 'model')) return;
    const { hint, fixes } = suggestions(definition, kind, workshop);
    const none = kind === 'model' ? say`There is no model called ${name}.` : say`There is no recipe called ${name}.`;
    report(relation.target.span, sentences(none, hint), { fixes });
  },
};

export const NO_PARENT: Rule = {
  code: 'no-parent',
  severity: 'error',
  title: 'A recipe that belongs to no model and no recipe',
  reason:
    'Every recipe but the first of a model is a diff of another; the first is made for the model. One that is neither has no body, no scale and no bracing.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 { top.thickness: 2.8 mm }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.8 mm }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    if (definition.relation && definition.relation.target.text !== '') return;
    if (definition.name.text === '') return;
    const stem = definition.name.text.replace(/-?\d+$/, '');
    const models = didYouMean(stem, workshop.shelf.names('model'));
    const model = workshop.shelf.find('model', stem) ? stem : models[0];
    const words = model === undefined ? [] : [`for ${model}`];
    report(
      definition.name.span,
      say`This recipe has neither a model nor a parent: write \`for\` and a model, or \`from\` and the recipe it changes.`,
      {
        fixes: words.map((text) => ({
          title: say`Write \`${text}\``,
          edits: [insertAt(definition, definition.name.span.end, ` ${text}`)],
          preferred: true,
        })),
      },
    );
  },
};

export const PARENT_RING: Rule = {
  code: 'parent-ring',
  severity: 'error',
  title: 'Recipes that descend from each other',
  reason:
    'Following the parents must end at a base recipe. In a ring every recipe waits for another, and none has a value.',
  bad: `recipe tarn-1 from tarn-2 { }
recipe tarn-2 from tarn-1 { }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    if (!isInForce(definition, workshop) || !definition.relation) return;
    const name = definition.name.text;
    const ring = workshop.ring(name);
    if (!ring) return;
    const at = ring.indexOf(name);
    const fromHere = [...ring.slice(at), ...ring.slice(0, at), name];
    const others = ring.filter((other) => other !== name);
    report(
      definition.relation.target.span,
      ring.length === 1
        ? say`${name} cannot be its own parent.`
        : say`These recipes go round in a ring: ${fromHere.join(' from ')}. One of them must start from a model or from another recipe.`,
      {
        related: others.flatMap((other) => {
          const recipe = workshop.shelf.find('recipe', other);
          const place = recipe?.relation && { definition: recipe, span: recipe.relation.target.span };
          return place ? [{ place, message: say`${other} is part of the ring` }] : [];
        }),
      },
    );
  },
};

export const BUILD_OF_UNKNOWN: Rule = {
  code: 'build-of-unknown',
  severity: 'error',
  title: 'A build of no known recipe',
  reason:
    'A build is held against the recipe it was made from. Without one its numbers cannot be compared with anything.',
  bad: `build no-31 of tarn-1 { resonance.top: 181 Hz }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
build no-31 of tarn-1 { resonance.top: 181 Hz }`,
  of: ['build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const target = definition.relation?.target;
    if (!target || target.text === '') {
      if (definition.name.text === '') return;
      report(definition.name.span, say`Say which recipe this was built to: \`build no-31 of tarn-7\`.`);
      return;
    }
    if (workshop.shelf.kindsOf(target.text).length > 0) return;
    const { hint, fixes } = suggestions(definition, 'recipe', workshop);
    report(target.span, sentences(say`There is no recipe called ${target.text}.`, hint), { fixes });
  },
};

function suggestions(
  definition: Definition,
  kind: DefinitionKind,
  workshop: Workshop,
): { hint: string; fixes: readonly Fix[] } {
  const { say } = workshop.wording;
  const target = definition.relation?.target ?? definition.name;
  const names = workshop.shelf.names(kind).filter((name) => name !== definition.name.text);
  const near = didYouMean(target.text, names);
  return {
    hint: suggestion(near, workshop.wording),
    fixes: near.map((text, i) => ({
      title: say`Write ${text}`,
      edits: [replace(definition, target.span, text)],
      preferred: i === 0,
    })),
  };
}
