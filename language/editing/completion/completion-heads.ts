/** Definitions to begin, and what their heads may name. */
import { BARE_KINDS } from '../../checks/names/name-rules.js';
import type { DefinitionKind } from '../../facts/facts.js';
import { english } from '../../wording/wording.js';
import type { Offer } from './offer.js';
import type { Desk } from '../../checks/desk.js';

interface Head {
  readonly kind: DefinitionKind;
  readonly sentence: string;
  readonly body: string;
}

const HEADS: readonly Head[] = [
  {
    kind: 'recipe',
    sentence: english('An instrument, as a checked difference from its parent.'),
    body: 'recipe ${1:name} from ${2:parent} {\n  because "${3:why}"\n  $0\n}',
  },
  {
    kind: 'wood',
    sentence: english('A measured set of wood.'),
    body: 'wood ${1:name} is ${2:sitka-spruce} {\n  use: ${3:top}\n  blank: ${4:560} mm x ${5:212} mm x ${6:4.4} mm\n  mass: ${7:214} g\n  $0\n}',
  },
  { kind: 'model', sentence: english('A body model: what all its recipes share.'), body: 'model ${1:name} {\n  $0\n}' },
  {
    kind: 'build',
    sentence: english('What was really made, measured and heard.'),
    body: 'build ${1:no-1} of ${2:recipe} {\n  $0\n}',
  },
  {
    kind: 'strings',
    sentence: english('A set of strings.'),
    body: 'strings ${1:name} {\n  tuning: E4, B3, G3, D3, A2, E2\n  gauges: ${2:.012 in, .016 in, .024 in, .032 in, .042 in, .053 in}\n  $0\n}',
  },
  {
    kind: 'rig',
    sentence: english('How the shop measures a deflection.'),
    body: 'rig ${1:name} {\n  span: ${2:500} mm\n  load: ${3:2.268} kg\n  at: middle\n  width: ${4:400} mm\n  $0\n}',
  },
  {
    kind: 'appointments',
    sentence: english('What the player sees or plugs in, as a named package.'),
    body: 'appointments ${1:name} {\n  $0\n}',
  },
  {
    kind: 'order',
    sentence: english('What was agreed with a client.'),
    body: 'order ${1:code} of ${2:recipe} {\n  $0\n}',
  },
  {
    kind: 'shop',
    sentence: english('What the shop has settled once: climate, tolerances, how many changes an instrument may make.'),
    body: 'shop ${1:name} {\n  title: "${2:Shop}"\n  climate { humidity: ${3:45} %RH   temperature: ${4:20} °C }\n  vary at most ${5:1}\n  $0\n}',
  },
  {
    kind: 'species',
    sentence: english('A species the library does not have, or has otherwise.'),
    body: 'species ${1:name} {\n  latin: "${2:}"\n  $0\n}',
  },
];

export function definitionHeads(desk: Desk): readonly Offer[] {
  const [newest] = recipesInHand(desk);
  const [toBuild] = recipesInHand(desk, 'build');
  const ownNames: Partial<Record<DefinitionKind, readonly [string, string]>> = {
    recipe: ['${1:name} from ${2:parent}', `\${1:${nextName(newest) ?? 'name'}} from \${2:${newest ?? 'parent'}}`],
    build: ['${2:recipe}', `\${2:${toBuild ?? 'recipe'}}`],
    order: ['${2:recipe}', `\${2:${newest ?? 'recipe'}}`],
  };
  const heads = HEADS.map((head, rank): Offer => {
    const [general, own] = ownNames[head.kind] ?? ['', ''];
    return {
      label: head.kind,
      kind: 'definition',
      sentence: head.sentence,
      insert: head.body.replace(general, () => own),
      snippet: true,
      rank,
    };
  });
  const base: Offer = {
    label: english('recipe for a model'),
    kind: 'definition',
    sentence: english('The base recipe of a model: everything the model leaves open.'),
    insert: `recipe \${1:name} for \${2:${desk.shelf.names('model').at(-1) ?? 'model'}} {\n  $0\n}`,
    snippet: true,
    rank: newest === undefined ? -1 : 0.5,
  };
  return [base, ...heads];
}

/**
 * Recipes, those somebody is likely to go on from first: of which no other is made, later numbers before earlier. With
 * `build`, those not built yet.
 */
function recipesInHand({ shelf }: Desk, next: 'recipe' | 'build' | 'order' = 'recipe'): readonly string[] {
  const taken = (name: string) => shelf.targeting(next, name).length > 0;
  const order = new Intl.Collator('en', { numeric: true });
  return [...shelf.names('recipe')].sort((a, b) => Number(taken(a)) - Number(taken(b)) || order.compare(b, a));
}

/** `vennick-43` after `vennick-42`. */
function nextName(name: string | undefined): string | undefined {
  const numbered = /^(.*?)(\d+)$/.exec(name ?? '');
  return numbered ? `${numbered[1]!}${Number(numbered[2]) + 1}` : undefined;
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

/** Names for behind `is`, `for`, `from` or `of`; `own` is the definition’s own name, which cannot be its parent. */
export function targetNames(desk: Desk, of: DefinitionKind, relation: string, own: string): readonly Offer[] {
  const offer = (kind: DefinitionKind, first: number) => (name: string, rank: number) => ({
    label: name,
    kind: 'definition' as const,
    detail: BARE_KINDS[kind],
    insert: name,
    rank: first + rank / 10_000,
  });
  if (relation === 'is') {
    const known = (name: string) => desk.shelf.targeting('wood', name).length > 0;
    const species = [...desk.shelf.names('species')].sort((a, b) => Number(known(b)) - Number(known(a)));
    return [...species.map(offer('species', 0)), ...desk.shelf.names('wood').map(offer('wood', 1))];
  }
  if (relation === 'for') return desk.shelf.names('model').map(offer('model', 0));
  if (relation === 'from' && of === 'recipe') {
    return recipesInHand(desk)
      .filter((name) => name !== own)
      .map(offer('recipe', 0));
  }
  return of === 'build' || of === 'order' ? recipesInHand(desk, of).map(offer('recipe', 0)) : [];
}
