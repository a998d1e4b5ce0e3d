/** Renaming: every place that names the thing, and no name that would make another thing of any place. */
import { describe, expect, it } from 'vitest';
import { rename, renameRange } from '../../language/editing/navigation/references.js';
import { deskAt } from './desk-of.js';

const SHOP = `wood spruce-1 is sitka-spruce { use: top }
wood walnut-2 is black-walnut { use: back }
model m { scale: 645 mm }
recipe r-1 for m { top.wood: spruce-1  back.wood: black-walnut }
recipe r-2 from r-1 { change top.wood: spruce-1 -> sitka-spruce }
`;

function renamed(marked: string, to: string): string {
  const { desk, uri, position } = deskAt(marked);
  const places = rename(desk, uri, position, to);
  if (typeof places === 'string') return places;
  const lines = marked.replace('|', '').split('\n');
  const inOrder = [...places].sort((a, b) => b.range.start.character - a.range.start.character);
  for (const { range } of inOrder) {
    const line = lines[range.start.line]!;
    lines[range.start.line] = line.slice(0, range.start.character) + to + line.slice(range.end.character);
  }
  return lines.join('\n');
}

it('changes the name and every place that says it, old values too', () => {
  expect(renamed(SHOP.replace('top.wood: spruce-1', 'top.wood: spru|ce-1'), 'spruce-9')).toBe(
    SHOP.replaceAll('spruce-1', 'spruce-9'),
  );
  expect(renamed(SHOP.replace('recipe r-1', 'recipe r-|1'), '31')).toBe(SHOP.replaceAll('r-1', '31'));
});

describe('refuses', () => {
  const wood = SHOP.replace('wood spruce-1', 'wood spru|ce-1');

  it('a name that is taken', () => {
    expect(renamed(wood, 'walnut-2')).toBe('There already is a wood called walnut-2.');
  });

  it('a name by which other places mean something else, which they would then mean no more', () => {
    expect(renamed(wood, 'black-walnut')).toContain('is the name of a species that is used here');
    // Nobody names this species, so nothing changes its meaning.
    expect(renamed(wood, 'apple')).toContain('wood apple is sitka-spruce');
  });

  it.each(['two words', '', '-x', 'x-', '12', 'unknown', 'a.b', '"a"', '7/64'])(
    '%j, which would not read as a name',
    (to) => {
      expect(renamed(wood, to)).toContain('is not a name');
    },
  );

  it('what belongs to the library, and what has no name', () => {
    const { desk, uri, position } = deskAt(SHOP.replace('back.wood: black', 'back.wood: bl|ack'));
    expect(renameRange(desk, uri, position)).toContain('read-only');
    const path = deskAt(SHOP.replace('back.wood', 'ba|ck.wood'));
    expect(renameRange(path.desk, path.uri, path.position)).toContain('Only the name');
  });
});
