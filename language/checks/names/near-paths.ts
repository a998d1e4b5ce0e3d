/** What may have been meant by a path the catalogue does not know, and what it knows in that place. */
import { distance } from 'fastest-levenshtein';
import { ELSEWHERE } from '../../catalogue/elsewhere.js';
import { didYouMean } from '../../quantities/suggest.js';
import type { Definition } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Written } from '../../recipes/instrument/written.js';
import { slippedPath } from './slipped-path.js';

export interface Near {
  readonly path: string;
  /** What to write in place of the words written here; undefined where it belongs outside the block around. */
  readonly text: string | undefined;
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
  const elsewhere = keptElsewhere(written, definition, workshop);
  if (elsewhere !== undefined) return [near(elsewhere, within)];
  const inside = insidePart(last, around.replace(/\.$/, ''), definition, workshop);
  if (inside !== undefined) return [{ path: within + lead + inside, text: lead + inside }];
  const slipped = slippedPath(local, written.within, written.role === 'part', definition, workshop);
  if (slipped.length > 0) return slipped.map((path) => near(path, within));
  if (written.within !== '') return [];
  const all = catalogue.all.filter((property) => property.where.includes(kind) && !property.path.includes('*'));
  const joined = local.length > 1 ? knownAs(local.join('-'), definition, workshop) : undefined;
  if (joined !== undefined) return [{ path: joined, text: joined }];
  const far = didYouMean(written.canonical, [
    ...all.map(({ path }) => path),
    ...catalogue.parts.map(({ path }) => path).filter((path) => catalogue.children(path, kind).properties.length > 0),
  ]);
  // The same words in another order, the one word elsewhere, or a slip or two in the whole; a word that only looks a
  // little like it, or one of many called `width`, is no help.
  return far
    .filter(
      (path) =>
        (lastOf(path) === lastOf(written.canonical) && local.length === 1) ||
        wordsOf(path) === wordsOf(written.canonical) ||
        distance(path, written.canonical) <= 2,
    )
    .map((path) => ({ path, text: path }));
}

/** In a block only what lies inside it can be written in place of the words. */
function near(path: string, within: string): Near {
  if (within === '') return { path, text: path };
  return { path, text: path.startsWith(within) ? path.slice(within.length) : undefined };
}

/** `neck.scale`, `bridge.saddle.length`, `topThickness`: what everybody would understand, and where it is kept. */
function keptElsewhere(written: Written, definition: Definition, workshop: Workshop): string | undefined {
  const whole = (written.within === '' ? '' : `${written.within}.`) + asWritten(written);
  for (const path of [
    written.canonical,
    whole.replace(/([a-z])([A-Z])/g, '$1.$2').toLowerCase(),
    whole.toLowerCase(),
  ]) {
    const words = path.split('.');
    for (let end = words.length; end > 0; end--) {
      const known = ELSEWHERE.get(words.slice(0, end).join('.'));
      const meant = known && readAs([known, ...words.slice(end)].join('.'), written, definition, workshop);
      if (meant !== undefined) return meant;
    }
    // `back.bracing.pattern`, `top.radius`
    for (let end = 2; end <= words.length; end++) {
      const joined = [words.slice(0, end).join('-'), ...words.slice(end)].join('.');
      const meant = readAs(joined, written, definition, workshop);
      if (meant !== undefined) return meant;
    }
    // `body.binding.wood`: what is a part by itself, said to be of another.
    for (let start = 1; start < words.length; start++) {
      const alone = words.slice(start).join('.');
      if (NOT_BY_ITSELF.has(alone)) continue;
      const meant = readAs(alone, written, definition, workshop);
      if (meant !== undefined) return meant;
    }
    // `top_thickness`, `bridgeplate.thickness`
    const parted = readAs(path.replace(/_/g, '.'), written, definition, workshop);
    if (parted !== undefined && parted !== written.canonical) return parted;
  }
  return undefined;
}

/** Words that mean something of their own at the outermost, and another thing inside a part. */
const NOT_BY_ITSELF: ReadonlySet<string> = new Set([
  'profile',
  'kind',
  'title',
  'description',
  'form',
  'model',
  'film',
]);

/** The catalogue's path, if there is one of the right sort in such a definition. */
function readAs(path: string, { role }: Written, { kind }: Definition, { catalogue }: Workshop): string | undefined {
  const canonical = catalogue.canonical(path, kind);
  if (catalogue.property(canonical, kind)) return canonical;
  if (canonical.includes('*') || !catalogue.part(canonical)) return undefined;
  return role === 'part' && catalogue.children(canonical, kind).properties.length > 0 ? canonical : undefined;
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
