/** Web addresses and DOIs in the text become links; nothing else does. */
import { expect, it } from 'vitest';
import { linksIn } from '../../language/editing/navigation/links.js';
import { deskOf } from './desk-of.js';

function links(text: string): readonly (readonly [written: string, target: string])[] {
  const lines = text.split('\n');
  return linksIn(deskOf(text), 'file:0').map(({ range: { start, end }, target }) => [
    lines[start.line]!.slice(start.character, end.character),
    target,
  ]);
}

it('finds the source beside a number', () => {
  expect(links('wood w {\n  density: 400 kg/m³ per "https://example.org/table(5-1), page 3."\n}')).toEqual([
    ['https://example.org/table(5-1)', 'https://example.org/table(5-1)'],
  ]);
});

it('leaves the stop and the bracket of a sentence out', () => {
  expect(links('// (see http://example.org/a.) and "https://example.org/b".')).toEqual([
    ['http://example.org/a', 'http://example.org/a'],
    ['https://example.org/b', 'https://example.org/b'],
  ]);
});

it('resolves a DOI', () => {
  expect(links('wood w { density: 400 kg/m³ per "Wegst, doi:10.3732/ajb.93.10.1439" }')).toEqual([
    ['doi:10.3732/ajb.93.10.1439', 'https://doi.org/10.3732/ajb.93.10.1439'],
  ]);
});

it('takes nothing else for a link', () => {
  expect(links('wood w { density: 400 kg/m³ per "javascript:alert(1), file:///etc, example.org" }')).toEqual([]);
  expect(linksIn(deskOf(), 'file:9')).toEqual([]);
});
