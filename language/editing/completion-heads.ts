/** Definitions to begin, and what their heads may name. */
import type { DefinitionKind } from '../recipes/facts.js';
import type { Offer } from './completion.js';
import type { Desk } from './desk.js';

interface Head {
  readonly kind: DefinitionKind;
  readonly sentence: string;
  readonly body: string;
}

const HEADS: readonly Head[] = [
  {
    kind: 'recipe',
    sentence: 'An instrument, as a checked difference from its parent.',
    body: 'recipe ${1:name} from ${2:parent} {\n  because "${3:why}"\n  $0\n}',
  },
  {
    kind: 'wood',
    sentence: 'A measured set of wood.',
    body: 'wood ${1:name} is ${2:sitka-spruce} {\n  use: ${3:top}\n  blank: ${4:560} mm x ${5:212} mm x ${6:4.4} mm\n  mass: ${7:214} g\n  $0\n}',
  },
  { kind: 'model', sentence: 'A body model: what all its recipes share.', body: 'model ${1:name} {\n  $0\n}' },
  {
    kind: 'build',
    sentence: 'What was really made, measured and heard.',
    body: 'build ${1:no-1} of ${2:recipe} {\n  $0\n}',
  },
  {
    kind: 'strings',
    sentence: 'A set of strings.',
    body: 'strings ${1:name} {\n  tuning: E4, B3, G3, D3, A2, E2\n  gauges: ${2:.012 in, .016 in, .024 in, .032 in, .042 in, .053 in}\n  $0\n}',
  },
  {
    kind: 'rig',
    sentence: 'How the shop measures a deflection.',
    body: 'rig ${1:name} {\n  span: ${2:500} mm\n  load: ${3:2.268} kg\n  at: middle\n  width: ${4:400} mm\n  $0\n}',
  },
  {
    kind: 'appointments',
    sentence: 'What the player sees or plugs in, as a named package.',
    body: 'appointments ${1:name} {\n  $0\n}',
  },
  { kind: 'order', sentence: 'What was agreed with a client.', body: 'order ${1:code} of ${2:recipe} {\n  $0\n}' },
  {
    kind: 'shop',
    sentence: 'What the shop has settled once: climate, tolerances, how many changes an instrument may make.',
    body: 'shop ${1:name} {\n  title: "${2:Shop}"\n  climate { humidity: ${3:45} %RH   temperature: ${4:20} °C }\n  vary at most ${5:1}\n  $0\n}',
  },
  {
    kind: 'species',
    sentence: 'A species the library does not have, or has otherwise.',
    body: 'species ${1:name} {\n  latin: "${2:}"\n  $0\n}',
  },
];

export function definitionHeads(desk: Desk): readonly Offer[] {
  const hasRecipes = desk.shelf.names('recipe').length > 0;
  const heads = HEADS.map((head, rank) => ({
    label: head.kind,
    kind: 'definition' as const,
    sentence: head.sentence,
    insert: head.body,
    snippet: true,
    rank,
  }));
  const base: Offer = {
    label: 'recipe for a model',
    kind: 'definition',
    sentence: 'The base recipe of a model: everything the model leaves open.',
    insert: 'recipe ${1:name} for ${2:model} {\n  $0\n}',
    snippet: true,
    rank: hasRecipes ? 0.5 : -1,
  };
  return [base, ...heads];
}

const RELATIONS: Partial<Record<DefinitionKind, readonly string[]>> = {
  wood: ['is'],
  recipe: ['from', 'for'],
  build: ['of'],
  order: ['of'],
};

export function relationWords(of: DefinitionKind): readonly Offer[] {
  return (RELATIONS[of] ?? []).map((word, rank) => ({ label: word, kind: 'keyword', insert: `${word} `, rank }));
}

export function targetNames(desk: Desk, of: DefinitionKind, relation: string): readonly Offer[] {
  const kinds: readonly DefinitionKind[] =
    relation === 'is' ? ['species', 'wood'] : relation === 'for' ? ['model'] : of === 'wood' ? [] : ['recipe'];
  return kinds.flatMap((kind, rank) =>
    desk.shelf
      .names(kind)
      .map((name) => ({ label: name, kind: 'definition' as const, detail: kind, insert: name, rank })),
  );
}
