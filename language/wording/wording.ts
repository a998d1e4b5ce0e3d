/**
 * The words people read, in their own language. English stands in the code, where it is easiest to keep true; a
 * translation is a table from the English sentence to the other one, read at the start and passed in. There is no global
 * language: whoever speaks is given a `Wording`.
 */

/** From an English sentence, its parts written `{0}`, `{1}` …, to the same sentence in another language. */
export type Translations = Readonly<Record<string, string>>;

export class Wording {
  /** A map, since texts of a file are looked up in it: `constructor` is in every plain object. */
  private readonly translations: ReadonlyMap<string, string>;

  constructor(
    translations: Translations = {},
    /** BCP 47: `en`, `de`. */
    readonly language = 'en',
  ) {
    this.translations = new Map(Object.entries(translations));
  }

  /** A sentence with parts: say`${path} is thinner than ${limit}` is looked up as `{0} is thinner than {1}`. */
  readonly say = (sentence: TemplateStringsArray, ...parts: readonly (string | number)[]): string => {
    const english = sentence.reduce((text, piece, i) => `${text}{${i - 1}}${piece}`);
    return this.text(english).replace(PART, (_, i: string) => String(parts[Number(i)]));
  };

  /** A sentence without parts, as a table of properties or rules has it. Not translated: the English one. */
  readonly text = (english: string): string => this.translations.get(english) ?? english;

  /**
   * A finished English sentence of those who know no wording, as the mechanics; its parts are told in the same way.
   * What no sentence of the table fits is given back as it is.
   */
  readonly told = (english: string): string => {
    const known = this.translations.get(english);
    if (known !== undefined) return known;
    return this.matched(english) ?? english;
  };

  private matched(english: string): string | undefined {
    for (const { pattern, sentence, article } of this.patterns()) {
      const parts = pattern.exec(english);
      if (!parts) continue;
      const told = sentence.replace(PART, (_, i: string) => {
        const part = parts[Number(i) + 1] ?? '';
        return article && i === '0' ? this.withArticle(part) : this.told(part);
      });
      return article && sentence.startsWith('{0}') && english.startsWith('T') ? capitalised(told) : told;
    }
    return undefined;
  }

  /** A name at the head of a sentence: languages differ in how `the` goes with it. */
  private withArticle(name: string): string {
    const whole = `the ${name}`;
    return this.translations.get(whole) ?? this.matched(whole) ?? this.told(name);
  }

  /** `a`, `a and b`, `a, b and c`. */
  readonly and = (items: readonly string[]): string => listed(items, this.text('and'));

  /** `a`, `a or b`, `a, b or c`. */
  readonly or = (items: readonly string[]): string => listed(items, this.text('or'));

  /** Like `and`, but cut short: `a, b, c, d and 3 more`. */
  readonly some = (items: readonly string[], most = 4): string =>
    items.length <= most
      ? this.and(items)
      : this.say`${items.slice(0, most).join(', ')} and ${items.length - most} more`;

  private compiled: readonly Pattern[] | undefined;

  private patterns(): readonly Pattern[] {
    return (this.compiled ??= patternsOf(this.translations));
  }
}

/** What an English sentence with parts looks like when it is finished, and its translation. */
interface Pattern {
  readonly pattern: RegExp;
  readonly sentence: string;
  /** The English sentence begins with a part and its article. */
  readonly article: boolean;
}

/** The most telling first: a sentence may fit several, and fits best the one with most words of its own. */
function patternsOf(translations: ReadonlyMap<string, string>): readonly Pattern[] {
  return [...translations]
    .map(([english, sentence]) => ({ pieces: piecesOf(english), sentence }))
    .filter(({ pieces }) => pieces.length > 1 && pieces.some((piece) => /[a-z]{2}/.test(piece)))
    .sort((a, b) => b.pieces.join('').length - a.pieces.join('').length)
    .map(({ pieces, sentence }) => ({
      pattern: new RegExp(`^${pieces.map(literally).join('(.+?)')}$`, 's'),
      sentence,
      article: /^the $/i.test(pieces[0]!),
    }));
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What stands around the parts. */
function piecesOf(english: string): readonly string[] {
  return english.split(/\{\d+\}/);
}

function literally(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
}

const PART = /\{(\d+)\}/g;

export const ENGLISH = new Wording();

/** Marks the English words of a table, to be said later with `text`. What is marked must have its translations. */
export function english<T extends string>(words: T): T {
  return words;
}

/** Whole sentences one after the other; empty ones are left out. */
export function sentences(...all: readonly string[]): string {
  return all.filter((sentence) => sentence !== '').join(' ');
}

/** Languages there is a table for, beside English. */
const TRANSLATED = ['de'];

/** The language to speak for a locale as editors and terminals give it: `de`, `de-AT`, `de_DE.UTF-8`, `C`. */
export function languageOf(locale: string | undefined): string {
  const language = /^[a-z]{2,3}(?=$|[-_.@])/i.exec(locale ?? '')?.[0].toLowerCase() ?? 'en';
  return TRANSLATED.includes(language) ? language : 'en';
}

function listed(items: readonly string[], joining: string): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${joining} ${items[items.length - 1]}`;
}
