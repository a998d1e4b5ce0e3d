/** Names: that they are known, of the right kind, and given once. */
import type { Property } from '../catalogue/property.js';
import { didYouMean } from '../quantities/suggest.js';
import type { Definition, DefinitionKind, Span, Value, Word } from '../recipes/facts.js';
import { KINDS_OF_VALUE, wantedKinds } from '../recipes/mentions.js';
import type { Workshop } from '../recipes/workshop.js';
import { textAt, replace } from './mending.js';
import { aKind, suggestion } from './phrases.js';
import { EVERY_KIND, type Rule } from './rule.js';
import { english, sentences, type Wording } from '../wording/wording.js';

interface Naming {
  readonly name: string;
  readonly kinds: readonly DefinitionKind[];
  readonly span: Span;
}

export const UNKNOWN_NAME: Rule = {
  code: 'unknown-name',
  severity: 'error',
  title: 'A name that nothing in the folder has',
  reason:
    'A recipe leans on the woods, strings and packages it names. A name that belongs to nothing means that nothing can be computed from it.',
  bad: `wood spruce-12 is sitka-spruce { use: top }
model tarn { top.wood: spruce-21 }`,
  good: `wood spruce-12 is sitka-spruce { use: top }
model tarn { top.wood: spruce-12 }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, or } = workshop.wording;
    for (const { name, kinds, span } of namingsIn(definition, workshop)) {
      if (kinds.some((kind) => workshop.shelf.find(kind, name)) || otherKinds(name, kinds, workshop).length > 0)
        continue;
      const known = kinds.flatMap((kind) => workshop.shelf.names(kind));
      const near = didYouMean(name, known);
      const hint = suggestion(near, workshop.wording) || define(kinds, name, workshop.wording);
      report(
        span,
        sentences(say`There is no ${or(kinds.map((kind) => bareKind(kind, workshop.wording)))} called ${name}.`, hint),
        {
          fixes: near.map((text, i) => ({
            title: say`Write ${text}`,
            edits: [replace(definition, span, text)],
            preferred: i === 0,
          })),
        },
      );
    }
  },
};

export const WRONG_KIND: Rule = {
  code: 'wrong-kind',
  severity: 'error',
  title: 'A name of the wrong kind of thing',
  reason:
    'A recipe is made from a recipe or for a model; a plate is made of a wood. A name of another kind of thing there leaves the recipe without its parent, or the plate without its wood.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 from tarn { }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, or } = workshop.wording;
    const { relation } = definition;
    if (definition.kind === 'recipe' && relation) {
      const { target, word } = relation;
      const has = (kind: DefinitionKind) => workshop.shelf.find(kind, target.text) !== undefined;
      const [wanted, other, right] =
        word === 'for' ? (['model', 'recipe', 'from'] as const) : (['recipe', 'model', 'for'] as const);
      if (!has(wanted) && has(other)) {
        report(
          target.span,
          other === 'model'
            ? say`${target.text} is a model: a recipe is made \`for\` a model.`
            : say`${target.text} is a recipe: a recipe is made \`from\` another recipe.`,
          {
            fixes: relationFix(definition, right, workshop.wording),
          },
        );
        return;
      }
    }
    for (const { name, kinds, span } of namingsIn(definition, workshop, 'all')) {
      if (kinds.some((kind) => workshop.shelf.find(kind, name))) continue;
      const others = otherKinds(name, kinds, workshop);
      const [other] = others;
      if (other === undefined) continue;
      report(
        span,
        say`${name} is ${aKind(other, workshop.wording)}; ${or(kinds.map((kind) => aKind(kind, workshop.wording)))} is needed here.`,
      );
    }
  },
};

export const DUPLICATE_NAME: Rule = {
  code: 'duplicate-name',
  severity: 'error',
  title: 'Two definitions of the same name',
  reason:
    'Anything in the folder can be named from anywhere in it, so a name must mean one thing. With two of the same kind and name nobody can say which one a recipe leans on.',
  bad: `wood spruce-12 is sitka-spruce { mass: 214 g }
wood spruce-12 is sitka-spruce { mass: 220 g }`,
  good: `wood spruce-12 is sitka-spruce { mass: 214 g }
wood spruce-13 is sitka-spruce { mass: 220 g }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const { kind, name } = definition;
    if (name.text === '') return;
    const all = workshop.shelf.named(kind, name.text);
    if (all.length < 2 || !all.includes(definition)) return;
    const others = all.filter((other) => other !== definition);
    const too =
      others.length === 1
        ? say`Another ${bareKind(kind, workshop.wording)} is called ${name.text} too.`
        : say`${others.length} other definitions of this kind is called ${name.text} too.`;
    const first =
      all[0] === definition
        ? say`This one counts; give each its own name.`
        : say`The first one counts; give each its own name.`;
    report(name.span, sentences(too, first), {
      related: others.map((other) => ({
        place: { definition: other, span: other.name.span },
        message: say`${other.name.text} is defined here too`,
      })),
    });
  },
};

export const UNKNOWN_PART: Rule = {
  code: 'unknown-part',
  severity: 'warning',
  title: 'A part the instrument does not have',
  reason: 'Some lines say where a thing sits or what it crosses. If that part is not there, the line says nothing.',
  bad: `model tarn {
  bracing {
    x-bass { width: 8 mm  over: x-trebel }
    x-treble { width: 8 mm }
  }
}`,
  good: `model tarn {
  bracing {
    x-bass { width: 8 mm  over: x-treble }
    x-treble { width: 8 mm }
  }
}`,
  of: ['model', 'recipe', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const values = partsOf(definition, workshop);
    if (!values) return;
    for (const { property, canonical, values: stated } of workshop.written(definition)) {
      if (property?.kind !== 'part') continue;
      for (const { as, value } of stated) {
        if (value.kind !== 'name' || as === 'old') continue;
        const siblings = siblingsAt(canonical, values);
        const path = workshop.catalogue.canonical(value.name);
        const known = siblings.includes(value.name) || (workshop.catalogue.part(path) && !path.startsWith('bracing.'));
        if (known || values.has(path) || hasMember(values, path)) continue;
        const near = didYouMean(value.name, [...siblings, ...workshop.catalogue.parts.map((part) => part.path)]);
        report(
          value.span,
          sentences(say`This instrument has no part called ${value.name}.`, suggestion(near, workshop.wording)),
          {
            fixes: near.map((text, i) => ({
              title: say`Write ${text}`,
              edits: [replace(definition, value.span, text)],
              preferred: i === 0,
            })),
          },
        );
      }
    }
  },
};

export const SEVERAL_SHOPS: Rule = {
  code: 'several-shops',
  severity: 'warning',
  title: 'More than one shop in a folder',
  reason:
    'The shop says what can be told apart at the bench and how many things an instrument may change. Only one can be in force; the other is not read.',
  bad: `shop marram { vary at most 1 }
shop tarn-side { vary at most 2 }`,
  good: `shop marram { vary at most 1 }`,
  of: ['shop'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const names = workshop.shelf.names('shop');
    const inForce = workshop.shelf.shop();
    if (names.length < 2 || !inForce || inForce === definition) return;
    report(
      definition.name.span,
      say`There are ${names.length} shops here: ${workshop.wording.some(names)}. Only ${inForce.name.text} is read; keep one in a folder.`,
      {
        related: [{ place: { definition: inForce, span: inForce.name.span }, message: say`this shop is read` }],
      },
    );
  },
};

/** Names in values, packages and heads. Heads of recipes and builds have rules of their own, unless `all` are wanted. */
function namingsIn(definition: Definition, workshop: Workshop, which?: 'all'): readonly Naming[] {
  const found: Naming[] = [];
  const { relation, kind } = definition;
  const ownRule = kind === 'recipe' || (kind === 'build' && which !== 'all');
  if (relation && relation.target.text !== '' && !ownRule) {
    found.push({ name: relation.target.text, kinds: wantedKinds(definition), span: relation.target.span });
  }
  for (const word of packagesIn(definition)) found.push({ name: word.text, kinds: ['appointments'], span: word.span });
  for (const { property, values } of workshop.written(definition)) {
    const kinds = property && KINDS_OF_VALUE[property.kind];
    if (!kinds) continue;
    // An old value may name a set that has left the shop since; the parent's own line is checked where it stands.
    for (const { as, value } of values) if (as !== 'old') found.push(...namesIn(value, property, kinds));
  }
  return found;
}

function namesIn(value: Value, property: Property, kinds: readonly DefinitionKind[]): readonly Naming[] {
  if (value.kind === 'list') return value.items.flatMap((item) => namesIn(item, property, kinds));
  if (value.kind !== 'name' || property.words?.includes(value.name)) return [];
  return [{ name: value.name, kinds, span: value.span }];
}

export function packagesIn(definition: Definition): readonly Word[] {
  const inside = (statements: Definition['statements']): readonly Word[] =>
    statements.flatMap((statement) =>
      statement.kind === 'with' ? [statement.name] : 'statements' in statement ? inside(statement.statements) : [],
    );
  return inside(definition.statements);
}

function otherKinds(name: string, kinds: readonly DefinitionKind[], workshop: Workshop): readonly DefinitionKind[] {
  return workshop.shelf.kindsOf(name).filter((kind) => !kinds.includes(kind));
}

function relationFix(definition: Definition, word: string, { say }: Wording) {
  const { relation, head } = definition;
  const text = textAt(definition, head);
  const at = relation ? text.lastIndexOf(` ${relation.word} `) : -1;
  if (!relation || at < 0 || head.start.line !== head.end.line) return [];
  const start = { line: head.start.line, character: head.start.character + at + 1 };
  const span = { start, end: { line: start.line, character: start.character + relation.word.length } };
  return [
    {
      title: say`Write \`${word} ${relation.target.text}\``,
      edits: [replace(definition, span, word)],
      preferred: true,
    },
  ];
}

function partsOf(definition: Definition, workshop: Workshop) {
  const name = definition.name.text;
  if (definition.kind === 'recipe') return workshop.instrument(name)?.values;
  return definition.kind === 'build' ? workshop.build(name)?.values : workshop.model(name)?.values;
}

/** Names beside the member a path passes through: the other braces. */
function siblingsAt(path: string, values: ReadonlyMap<string, unknown>): readonly string[] {
  const root = path.slice(0, path.indexOf('.'));
  const names = new Set<string>();
  for (const other of values.keys()) {
    if (!other.startsWith(`${root}.`)) continue;
    const inside = other.slice(root.length + 1);
    if (inside.includes('.')) names.add(inside.slice(0, inside.indexOf('.')));
  }
  return [...names];
}

function hasMember(values: ReadonlyMap<string, unknown>, part: string): boolean {
  for (const path of values.keys()) if (path.startsWith(`${part}.`)) return true;
  return false;
}

/** `recipe`, `set of strings`: after "there is no" or "another". */
function bareKind(kind: DefinitionKind, { text }: Wording): string {
  return text(BARE_KINDS[kind]);
}

const BARE_KINDS: Readonly<Record<DefinitionKind, string>> = {
  shop: english('shop'),
  species: english('species'),
  wood: english('wood'),
  model: english('model'),
  recipe: english('recipe'),
  build: english('build'),
  rig: english('rig'),
  strings: english('set of strings'),
  appointments: english('set of appointments'),
  order: english('order'),
};

function define([kind]: readonly DefinitionKind[], name: string, { say }: Wording): string {
  return say`Define it: \`${`${kind} ${name}${kind === 'wood' ? ' is …' : ''} { … }`}\`.`;
}
