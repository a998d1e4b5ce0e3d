/** What a panel and its page say to each other. Both sides import this file, which imports nothing. */

/** Texts of a page, in the language of the editor. `{0}` stands for what the page puts in. */
export type Words<Key extends string = string> = Readonly<Record<Key, string>>;

/** From the extension: what to show, whole, each time something in it is different. */
export interface ToPage<Subject, Content, W extends Words> {
  readonly kind: 'show';
  /** What is shown, by name; kept by the page, so that the panel is found again after the window is reloaded. */
  readonly subject: Subject;
  readonly content: Content;
  readonly words: W;
}

/** From the extension: what stands on the page may be out of date; why, in a sentence. Until something is shown again. */
export interface OldToPage {
  readonly kind: 'old';
  readonly why: string;
}

/** From the page: it has been (re)loaded and shows nothing yet, or the maker wants something done. */
export type FromPage<Action> = { readonly kind: 'ready' } | { readonly kind: 'act'; readonly action: Action };

/** What the page has the editor keep for it. `view`: choices made in the page itself, such as which plate is drawn. */
export interface Kept<Subject, View> {
  readonly subject: Subject;
  readonly view: View;
}
