/**
 * The words people read, in their own language. English stands in the code, where it is easiest to keep true; a
 * translation is a table from the English sentence to the other one, read at the start and passed in. There is no global
 * language: whoever speaks is given a `Wording`.
 */

/** From an English sentence, its parts written `{0}`, `{1}` …, to the same sentence in another language. */
export type Translations = Readonly<Record<string, string>>;

export class Wording {
  constructor(
    private readonly translations: Translations = {},
    /** BCP 47: `en`, `de`. */
    readonly language = 'en',
  ) {}

  /** A sentence with parts: say`${path} is thinner than ${limit}` is looked up as `{0} is thinner than {1}`. */
  readonly say = (sentence: TemplateStringsArray, ...parts: readonly (string | number)[]): string => {
    const english = sentence.reduce((text, piece, i) => `${text}{${i - 1}}${piece}`);
    return this.text(english).replace(PART, (_, i: string) => String(parts[Number(i)]));
  };

  /** A sentence without parts, as a table of properties or rules has it. Not translated: the English one. */
  readonly text = (english: string): string => this.translations[english] ?? english;
}

const PART = /\{(\d+)\}/g;

export const ENGLISH = new Wording();
