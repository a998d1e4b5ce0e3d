/** A workshop from texts, for tests: `shopOf('recipe …')`, or one text per file. */
import { readFileSync } from 'node:fs';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { createParser } from '../../language/grammar/parse.js';
import { Bookshelf } from '../../language/recipes/shelf/bookshelf.js';
import type { Problem } from '../../language/facts/facts.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { Workshop } from '../../language/recipes/workshop.js';

const parser = createParser();
const library = readFile(
  'library:species',
  readFileSync(new URL('../../language/catalogue/species.bookmatch', import.meta.url), 'utf8'),
  parser,
);

export interface TestShop {
  readonly workshop: Workshop;
  readonly shelf: Bookshelf;
  put(uri: string, text: string): void;
  readonly problems: () => readonly Problem[];
}

export function shopOf(...files: readonly string[]): TestShop {
  const shelf = new Bookshelf();
  shelf.putLibrary(library);
  shelf.put(...files.map((text, i) => readFile(`file:${i}`, text, parser)));
  return {
    workshop: new Workshop(shelf, catalogue),
    shelf,
    put: (uri, text) => shelf.put(readFile(uri, text, parser)),
    problems: () =>
      shelf.uris().flatMap((uri) => {
        const facts = shelf.file(uri)!;
        return [...facts.problems, ...facts.definitions.flatMap(({ definition }) => definition.problems)];
      }),
  };
}

/** An OM-size model with the least that plates, braces, air and strings need. */
export const VENNICK = `
shop test { vary at most 1 }
rig r2 { span: 500 mm  load: 2.268 kg  at: middle  width: 400 mm }
strings light-12 { gauges: .012 in, .016 in, .024 in, .032 in, .042 in, .053 in  tuning: E4, B3, G3, D3, A2, E2 }
model vennick {
  body {
    length: 489 mm
    lower-bout { width: 381 mm  station: 112 mm }
    waist { width: 241 mm  station: 290 mm }
    upper-bout { width: 286 mm  station: 415 mm }
    depth { tail: 105 mm  neck: 86 mm }
    top-radius: 28 ft  back-radius: 15 ft
  }
  scale: 645 mm
  soundhole { diameter: 101 mm  station: 335 mm }
  bracing {
    x-bass { from: (78 mm, -150 mm)  to: (405 mm, 92 mm)  width: 7.9 mm  height: 15.9 mm  profile: parabolic }
    x-treble { from: (78 mm, 150 mm)  to: (405 mm, -92 mm)  width: 7.9 mm  height: 15.9 mm  profile: parabolic }
  }
  bridge { mass: 27 g  length: 152 mm  width: 34 mm  height: 9 mm }
  saddle.protrusion: 3.3 mm
  strings: light-12
}
`;

/** Tops of one species with stated properties; and one of another. */
export const TOPS = `
wood sitka-31 is sitka-spruce { use: top  density: 421 kg/m³  modulus { along: 10.8 GPa  across: 0.82 GPa } }
wood sitka-32 is sitka-spruce { use: top  density: 417 kg/m³  modulus { along: 10.9 GPa  across: 0.78 GPa } }
wood engelmann-37 is engelmann-spruce { use: top  density: 372 kg/m³  modulus { along: 9.1 GPa  across: 0.71 GPa } }
`;
