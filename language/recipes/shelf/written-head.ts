/** The head of a definition: its name, and what it `is`, or is `for`, `from` or `of`. */
import type { DefinitionKind, Problem, Relation, RelationWord, Span, Word } from '../../facts/facts.js';
import { english, type Wording } from '../../wording/wording.js';

type Words = readonly [Word, ...Word[]];

export interface Head {
  readonly name: Word;
  readonly relation?: Relation;
  readonly problems: readonly Problem[];
}

/**
 * Sorts out the words after the kind; `at` is the index of the relation word among them, -1 for none. Whatever is missing
 * is a problem; whatever is there is kept.
 */
export function readHead(
  kind: DefinitionKind,
  kindSpan: Span,
  words: readonly Word[],
  at: number,
  wording: Wording,
): Head {
  const { say, text } = wording;
  const problems: Problem[] = [];
  const named = at < 0 ? words : words.slice(0, at);
  const name = readName(kind, kindSpan, named, problems, wording);
  const word = words[at];
  if (word === undefined) return { name, problems };
  const [target, ...more] = words.slice(at + 1);
  const allowed = RELATIONS[kind];
  const relationWord = word.text as RelationWord;
  if (target === undefined) {
    problems.push({
      code: 'missing-name',
      message: say`After \`${word.text}\` a name is expected: \`${text(HEADS[kind])}\`.`,
      span: word.span,
      suggestions: [],
    });
    return { name, problems };
  }
  if (!allowed.includes(relationWord)) {
    problems.push({
      code: 'unreadable-line',
      message: say`The head of this definition is written \`${text(HEADS[kind])}\`.`,
      span: allowed.length > 0 ? word.span : joined([word, target, ...more]).span,
      suggestions: allowed.length > 0 ? allowed : [''],
    });
  }
  return { name, relation: { word: relationWord, target: oneName([target, ...more], problems, wording) }, problems };
}

const RELATIONS: Readonly<Record<DefinitionKind, readonly RelationWord[]>> = {
  shop: [],
  species: [],
  wood: ['is'],
  model: [],
  recipe: ['from', 'for'],
  build: ['of'],
  rig: [],
  strings: [],
  appointments: [],
  order: ['of'],
};

const HEADS: Readonly<Record<DefinitionKind, string>> = {
  shop: english('shop NAME { … }'),
  species: english('species NAME { … }'),
  wood: english('wood NAME is SPECIES { … }'),
  model: english('model NAME { … }'),
  recipe: english('recipe NAME from PARENT { … }, or for MODEL'),
  build: english('build NAME of RECIPE { … }'),
  rig: english('rig NAME { … }'),
  strings: english('strings NAME { … }'),
  appointments: english('appointments NAME { … }'),
  order: english('order NAME of RECIPE { … }'),
};

function readName(
  kind: DefinitionKind,
  kindSpan: Span,
  words: readonly Word[],
  problems: Problem[],
  wording: Wording,
): Word {
  const { say, text } = wording;
  const [first, ...more] = words;
  if (first !== undefined) return oneName([first, ...more], problems, wording);
  problems.push({
    code: 'missing-name',
    message: say`After \`${kind}\` a name is expected: \`${text(HEADS[kind])}\`.`,
    span: kindSpan,
    suggestions: [],
  });
  return { text: '', span: { start: kindSpan.end, end: kindSpan.end } };
}

function oneName(words: Words, problems: Problem[], { say }: Wording): Word {
  const whole = joined(words);
  if (words.length > 1) {
    const hyphened = words.map((word) => word.text).join('-');
    problems.push({
      code: 'unreadable-line',
      message: say`A name of several words is joined by hyphens: \`${hyphened}\`.`,
      span: whole.span,
      suggestions: [hyphened],
    });
  } else if (/[^\p{L}\p{M}\p{N}#♯♭·_-]/u.test(whole.text)) {
    const plain = whole.text.replace(/[^\p{L}\p{M}\p{N}#♯♭·_-]+/gu, '-').replace(/^-|-$/g, '');
    problems.push({
      code: 'unreadable-line',
      message: say`A name is made of letters, digits and hyphens: \`${plain}\`.`,
      span: whole.span,
      suggestions: [plain],
    });
  }
  return whole;
}

function joined(words: Words): Word {
  const last = words[words.length - 1] ?? words[0];
  return { text: words.map((word) => word.text).join(' '), span: { start: words[0].span.start, end: last.span.end } };
}
