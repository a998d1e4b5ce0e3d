/** What a maker who asks for a word is shown: the word itself, what it is another word for, what contains it, what is near. */
import { didYouMean } from '../../quantities/suggest.js';
import type { Entry } from './entry.js';

export interface Found {
  /** The word, or another word for these; the first is what is meant most often. */
  readonly entries: readonly Entry[];
  /** What lies inside it: the parts and properties of a part, each with its whole path. */
  readonly inside: readonly Entry[];
  /** Where nothing is called so: what has the word in its name or its sentence. */
  readonly mentioned: readonly Entry[];
  /** Where nothing mentions it either. */
  readonly near: readonly string[];
}

const MOST_MENTIONED = 40;

export function findWords(asked: string, all: readonly Entry[]): Found {
  const wanted = plain(asked);
  const named = all.filter(({ word }) => plain(word) === wanted || memberOf(word, wanted));
  const otherwise = all.filter((entry) => !named.includes(entry) && entry.also.some((word) => plain(word) === wanted));
  const last = all.filter((entry) => !otherwise.includes(entry) && plain(lastOf(entry.word)) === wanted);
  // What can be written before what is only computed.
  const [written, computed] = [true, false].map((is) => last.filter(({ section }) => (section !== 'computed') === is));
  const entries = named.length > 0 ? [...named, ...otherwise] : [...written!, ...otherwise, ...computed!];
  if (entries.length > 0) return { entries, inside: insideOf(entries, all), mentioned: [], near: [] };
  const mentioned = all.filter(({ word, sentence, also }) =>
    [word, sentence, ...also].some((text) => plain(text).includes(wanted)),
  );
  if (mentioned.length > 0) return { entries: [], inside: [], mentioned: mentioned.slice(0, MOST_MENTIONED), near: [] };
  const words = all.flatMap(({ word, also }) => [word, ...also]);
  return { entries: [], inside: [], mentioned: [], near: didYouMean(asked.toLowerCase(), words) };
}

function lastOf(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}

/** Everything of the parts found, in the order of the catalogue. */
function insideOf(entries: readonly Entry[], all: readonly Entry[]): readonly Entry[] {
  const parts = entries.filter(({ section }) => section === 'part').map(({ word }) => `${word}.`);
  return all.filter(
    ({ word, section }) =>
      (section === 'part' || section === 'property' || section === 'computed') &&
      parts.some((part) => word.startsWith(part)),
  );
}

/** `bracing.x-bass.height` is `bracing.*.height`. */
function memberOf(pattern: string, path: string): boolean {
  const [words, wanted] = [pattern.split('.'), path.split('.')];
  return (
    words.includes('*') &&
    words.length === wanted.length &&
    words.every((word, i) => word === '*' || plain(word) === wanted[i])
  );
}

function plain(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
}
