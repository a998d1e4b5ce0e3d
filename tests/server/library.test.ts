/** The species library is shown like a file and is none: opening and closing it leaves the shop as it was. */
import { expect, it } from 'vitest';
import { SPECIES_TEXT, SPECIES_URI } from '../../language/shop.js';
import { Session } from '../../language/server/session.js';
import { madeShop, uriOf } from '../scale/made-shop.js';

it('opening and closing the library changes no finding', async () => {
  const files = madeShop(1, 6);
  const session = new Session({
    list: () => Promise.resolve([...files.keys()]),
    read: (uri) => Promise.resolve(files.get(uri)),
  });
  await session.load(['file:///made-shop']);
  const findings = () => session.findings(uriOf('chain-0')).map(({ code, message }) => `${code}: ${message}`);
  const before = findings();
  session.type(SPECIES_URI, SPECIES_TEXT);
  await session.close(SPECIES_URI);
  expect(session.desk.shelf.find('species', 'sitka-spruce')).toBeDefined();
  expect(findings()).toEqual(before);
});
