/** What may have been meant by a path the catalogue does not know, and what it knows in that place. */
import { distance } from 'fastest-levenshtein';
import { didYouMean } from '../../quantities/suggest.js';
import type { Definition } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Written } from '../../recipes/instrument/written.js';

export interface Near {
  readonly path: string;
  /** What to write in place of the words written here. */
  readonly text: string;
}

/** The nearest paths, best first: what fits in this place, then the same last word under another part. */
export function nearPaths(written: Written, definition: Definition, workshop: Workshop): readonly Near[] {
  const { catalogue } = workshop;
  const { kind } = definition;
  const within = written.within === '' ? '' : `${written.within}.`;
  const local = asWritten(written).split('.');
  const around = within + local.slice(0, -1).join('.');
  const lead = local.length > 1 ? `${local.slice(0, -1).join('.')}.` : '';
  const last = local[local.length - 1] ?? '';
  const inside = insidePart(last, around.replace(/\.$/, ''), definition, workshop);
  if (inside !== undefined) return [{ path: within + lead + inside, text: lead + inside }];
  const { properties, parts } = catalogue.children(around.replace(/\.$/, ''), kind);
  // A slip in another word makers use is mended to the catalogue's own.
  const words = new Map<string, string>();
  for (const { path, synonyms } of [...properties, ...parts]) {
    const word = path.slice(path.lastIndexOf('.') + 1);
    if (word !== '*') for (const one of [word, ...synonyms]) if (!words.has(one)) words.set(one, word);
  }
  const here = [...new Set(didYouMean(last, [...words.keys()]).map((word) => words.get(word) ?? word))];
  if (here.length > 0) return here.map((word) => ({ path: within + lead + word, text: lead + word }));
  if (written.within !== '') return [];
  const all = catalogue.all.filter((property) => property.where.includes(kind) && !property.path.includes('*'));
  const joined = local.length > 1 ? knownAs(local.join('-'), definition, workshop) : undefined;
  if (joined !== undefined) return [{ path: joined, text: joined }];
  const far = didYouMean(written.canonical, [
    ...all.map(({ path }) => path),
    ...catalogue.parts.map(({ path }) => path),
  ]);
  // The same last word elsewhere, or a slip or two in the whole; a word that only looks a little like it is no help.
  return far
    .filter(
      (path) =>
        lastOf(path) === lastOf(written.canonical) ||
        wordsOf(path) === wordsOf(written.canonical) ||
        distance(path, written.canonical) <= 2,
    )
    .map((path) => ({ path, text: path }));
}

/** `top.radius`, where makers speak of the top-radius: the path that word stands for. */
function knownAs(word: string, { kind }: Definition, { catalogue }: Workshop): string | undefined {
  const canonical = catalogue.canonical(word, kind);
  return catalogue.property(canonical, kind) || (canonical === word && catalogue.part(word)) ? canonical : undefined;
}

/** `top.thickness.edge` and `top.edge-thickness` alike. */
function wordsOf(path: string): string {
  return path.split(/[-.]/).sort().join(' ');
}

function lastOf(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}

/** `pickup-mass`, where the catalogue has the mass inside the pickup. */
function insidePart(word: string, around: string, { kind }: Definition, { catalogue }: Workshop): string | undefined {
  for (let at = word.indexOf('-'); at > 0; at = word.indexOf('-', at + 1)) {
    const dotted = `${word.slice(0, at)}.${word.slice(at + 1)}`;
    const canonical = catalogue.canonical(around === '' ? dotted : `${around}.${dotted}`, kind);
    if (catalogue.property(canonical, kind)) return around === '' ? canonical : canonical.slice(around.length + 1);
  }
  return undefined;
}

/** What may be written in the part around, where nothing there is anything like what was written. */
export function whatThereIs(written: Written, { kind }: Definition, { catalogue, wording }: Workshop): string {
  const around = written.canonical.slice(0, Math.max(written.canonical.lastIndexOf('.'), 0));
  if (around === '') return '';
  const { properties, parts } = catalogue.children(around, kind);
  const words = [...properties, ...parts].map(({ path }) => path.slice(path.lastIndexOf('.') + 1));
  const known = [...new Set(words.filter((word) => word !== '*'))];
  return known.length === 0 ? '' : wording.say`${around} has ${wording.some(known)}.`;
}

/** The words as they stand at this place, without the blocks around. */
export function asWritten(written: Written): string {
  return written.path.segments.map(({ text }) => text).join('.');
}
