import { describe, expect, it } from 'vitest';
import { Wording } from '../../language/wording/wording.js';
import { partNamesLookedUp, tellAll } from './every-part-name.js';
import { messagesInCode } from './every-message.js';
import { type Sentences, sentencesInCode } from './every-sentence.js';
import { sentencesInTables } from './every-table-text.js';
import { marked } from './marked-words.js';
import { germanByArea, translationsOf } from './translations.js';

const wanted: Sentences = new Map([...sentencesInTables(), ...sentencesInCode('language'), ...messagesInCode()]);
const german = translationsOf('de');

describe('the German words', () => {
  it('are there for everything that is said', () => {
    expect([...wanted].filter(([english]) => !(english in german)).map(told)).toEqual([]);
  });

  it('tell every part, property and choice of a recipe', () => {
    const told = tellAll(new Wording(marked(german), 'de'));
    expect(told.filter(([, said]) => /[A-Za-z]{2}/.test(said))).toEqual([]);
  });

  it('are each for something that is still said', () => {
    const names = partNamesLookedUp();
    expect(Object.keys(german).filter((english) => !wanted.has(english) && !names.has(english))).toEqual([]);
  });

  it('have the same parts in them as the English ones', () => {
    expect(Object.entries(german).filter(([english, text]) => partsIn(english) !== partsIn(text))).toEqual([]);
  });

  it('stand in one file each', () => {
    const all = Object.values(germanByArea()).flatMap(Object.keys);
    expect(all.filter((english, i) => all.indexOf(english) !== i)).toEqual([]);
  });

  it('have as much code and emphasis in them', () => {
    const marks = (text: string) => [...text.matchAll(/`|\*\*|\$\{|\$\d|\n/g)].map(([mark]) => mark).sort();
    const differ = Object.entries(german).filter(([english, text]) => marks(english).join() !== marks(text).join());
    expect(differ).toEqual([]);
  });
});

function told([english, place]: readonly [string, string]): string {
  return `${place}: ${english}`;
}

function partsIn(text: string): string {
  return [...new Set(text.match(/\{\d+\}/g))].sort().join();
}
