/** Names: that they are known, of the right kind, and given once. */
import type { Property } from '../../catalogue/property.js';
import type { Definition, DefinitionKind, Span, Value, Word } from '../../facts/facts.js';
import { KINDS_OF_VALUE, wantedKinds } from '../../recipes/shelf/mentions.js';
import type { Workshop } from '../../recipes/workshop.js';
import { meantNames } from './meant-names.js';
import { textAt, replace } from '../mending.js';
import { aKind, suggestion } from '../phrases.js';
import { EVERY_KIND, type Rule } from '../rule.js';
import { english, sentences, type Wording } from '../../wording/wording.js';

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
      const near = meantNames(name, kinds, definition, workshop);
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
        {
          fixes: recipesFor(name, kinds, workshop).map((recipe, i) => ({
            title: say`Write ${recipe}`,
            edits: [replace(definition, span, recipe)],
            preferred: i === 0,
          })),
        },
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
    const [first] = all;
    // Told at the ones that are not read; the first is as it should be.
    if (!first || first === definition || !all.includes(definition)) return;
    const own = freeName(name.text, kind, workshop);
    report(
      name.span,
      say`Another ${bareKind(kind, workshop.wording)} is called ${name.text} too, and only the first is read. Give this one a name of its own.`,
      {
        related: [{ place: { definition: first, span: first.name.span }, message: say`${name.text} is defined here` }],
        fixes: [{ title: say`Write ${own}`, edits: [replace(definition, name.span, own)], preferred: true }],
      },
    );
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

/** `tarn-2` for a second `tarn-1`: the next number nobody has. */
function freeName(name: string, kind: DefinitionKind, workshop: Workshop): string {
  const [, stem = name, number = '1'] = /^(.*?)-?(\d{1,6})?$/.exec(name) ?? [];
  const joint = stem === '' || /-\d+$/.test(name) || !/\d$/.test(name) ? '-' : '';
  for (let next = Number(number) + 1; ; next++) {
    const free = stem === '' ? `${next}` : `${stem}${joint}${next}`;
    if (!workshop.shelf.find(kind, free)) return free;
  }
}

function otherKinds(name: string, kinds: readonly DefinitionKind[], workshop: Workshop): readonly DefinitionKind[] {
  return workshop.shelf.kindsOf(name).filter((kind) => !kinds.includes(kind));
}

/** Where a recipe is wanted and a model is named: the recipes for it. */
function recipesFor(model: string, kinds: readonly DefinitionKind[], { shelf }: Workshop): readonly string[] {
  if (!kinds.includes('recipe') || !shelf.find('model', model)) return [];
  return shelf
    .names('recipe')
    .filter((name) => shelf.find('recipe', name)?.relation?.target.text === model)
    .slice(0, 3);
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

/** `recipe`, `set of strings`: after "there is no" or "another". */
function bareKind(kind: DefinitionKind, { text }: Wording): string {
  return text(BARE_KINDS[kind]);
}

export const BARE_KINDS: Readonly<Record<DefinitionKind, string>> = {
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
