/** Heads of definitions: another word for the kind, another relation, a bracket or a brace forgotten. */
import { speciesCalled } from '../../../catalogue/wood-words.js';
import { DEFINITION_KINDS } from '../../../facts/facts.js';
import { typedDistance } from '../../../quantities/typed-distance.js';
import { KIND_WORDS } from '../../../facts/kind-words.js';
import type { Slip } from './slip.js';

const RELATIONS: ReadonlyMap<string, string> = new Map(
  Object.entries({ wood: 'is', recipe: 'from', build: 'of', order: 'of' }),
);

export const HEAD_SLIPS: readonly Slip[] = [
  {
    code: 'unreadable-line',
    why: ({ text }) => text('No definition begins with this word.'),
    mend({ text, isHead }) {
      const [, word = '', rest = ''] = /^(\p{L}[\p{L}\d-]*):?\s+(\S.*)$/su.exec(text) ?? [];
      if (!isHead || word === '' || !rest.includes('{')) return undefined;
      const low = word.toLowerCase();
      const kind = DEFINITION_KINDS.find((one) => one === low) ?? KIND_WORDS.get(low) ?? nearestKind(low);
      const mended = kind === undefined ? text : `${kind} ${rest}`;
      return mended === text ? undefined : mended;
    },
  },
  {
    code: 'unreadable-line',
    mend({ text, isHead }) {
      if (!isHead) return undefined;
      const mended = text.replace(/\s*[:=]\s*\{/, ' {').replace(/^([^{]*?)\((.*)\)$/s, '$1{$2}');
      return mended === text ? undefined : mended;
    },
  },
  {
    // The relation: mistyped, missing, or another word for it.
    code: 'unreadable-line',
    why: ({ say }) => say`A definition starts like \`recipe tarn-2 from tarn-1 {\`.`,
    mend({ text, kind, isHead }) {
      const relation = RELATIONS.get(kind ?? /^\w+/.exec(text)?.[0] ?? '');
      const [, opening = '', words = '', rest = ''] = /^(\w+)\s+([^{]+?)\s*(\{.*)$/s.exec(text) ?? [];
      if (!isHead || relation === undefined || words === '') return undefined;
      const parts = words
        .replace(/\s*[:=]\s*/, ' = ')
        .replace(/"/g, '')
        .split(/\s+/);
      const at = parts.findIndex((word, i) => i > 0 && isRelation(word.toLowerCase(), relation));
      const before = (at < 0 ? parts.slice(0, -1) : parts.slice(0, at)).join('-');
      const behind = (at < 0 ? parts.slice(-1) : parts.slice(at + 1)).filter(
        (word) => !SMALL_WORDS.has(word.toLowerCase()),
      );
      if (before === '' || behind.length === 0) return undefined;
      const plain = behind.join('-');
      const target = kind === 'wood' && behind.length > 1 ? (speciesCalled(plain)[0] ?? plain) : plain;
      const mended = `${opening} ${before} ${relation} ${target} ${rest}`;
      return mended === text ? undefined : mended;
    },
  },
];

const SMALL_WORDS: ReadonlySet<string> = new Set(['a', 'an', 'the', 'on', 'ein', 'eine', 'der', 'die', 'das', 'auf']);

function isRelation(word: string, relation: string): boolean {
  if (['=', 'is', 'from', 'of', 'for', 'von', 'aus', 'based', 'after', 'nach', 'ist', 'like'].includes(word))
    return true;
  return word.length > 1 && typedDistance(word, relation) <= 0.8;
}

function nearestKind(word: string): string | undefined {
  return DEFINITION_KINDS.find((kind) => typedDistance(word.replace(/\d+$/, ''), kind) <= (kind.length > 4 ? 1.8 : 1));
}
