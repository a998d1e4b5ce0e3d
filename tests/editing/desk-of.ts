/** A desk from texts, for tests. `deskAt('recipe … ch|ange …')`: the place meant is marked by a bar, which is taken out. */
import type { Desk } from '../../language/checks/desk.js';
import { openWorkshop } from '../../language/shop.js';
import { createParser } from '../../language/grammar/parse.js';
import type { Position } from '../../language/facts/facts.js';
import { readFile } from '../../language/recipes/shelf/reader.js';

const parser = createParser();

/** One file for each text, `file:0`, `file:1` and so on. */
export function deskOf(...texts: readonly string[]): Desk {
  const { shelf, workshop, checks } = openWorkshop({ parser });
  const files = new Map(texts.map((text, i) => [`file:${i}`, text]));
  shelf.put(...[...files].map(([uri, text]) => readFile(uri, text, parser)));
  return { shelf, workshop, checks, text: (uri) => files.get(uri) };
}

export interface MarkedDesk {
  readonly desk: Desk;
  readonly uri: string;
  readonly position: Position;
}

/** The marked text is the first file; the others are what it leans on. */
export function deskAt(marked: string, ...others: readonly string[]): MarkedDesk {
  const at = marked.indexOf('|');
  if (at < 0) throw new Error('the text marks no place');
  const before = marked.slice(0, at).split('\n');
  const desk = deskOf(before.join('\n') + marked.slice(at + 1), ...others);
  return { desk, uri: 'file:0', position: { line: before.length - 1, character: before.at(-1)!.length } };
}

/** An OM-size model with wood, strings and rig: enough for plates, braces, air and strings to be computed. */
export const VENNICK = `
shop test { climate { humidity: 45 %RH  temperature: 20 °C }  tolerance { thickness: 0.05 mm  mass: 1 g }  vary at most 1 }
rig r2 { span: 500 mm  load: 2.268 kg  at: middle  width: 400 mm }
strings light-12 { gauges: .012 in, .016 in, .024 in, .032 in, .042 in, .053 in  tuning: E4, B3, G3, D3, A2, E2 }
wood sitka-31 is sitka-spruce { use: top  density: 421 kg/m³  modulus { along: 10.8 GPa  across: 0.82 GPa } }
wood sitka-32 is sitka-spruce { use: top  density: 417 kg/m³  modulus { along: 10.9 GPa  across: 0.78 GPa } }
wood engelmann-37 is engelmann-spruce { use: top  density: 372 kg/m³  modulus { along: 9.1 GPa  across: 0.71 GPa } }
model vennick {
  kind: steel-string
  form: om
  body {
    length: 489 mm
    lower-bout { width: 381 mm  station: 112 mm }
    waist { width: 241 mm  station: 290 mm }
    upper-bout { width: 286 mm  station: 415 mm }
    depth { tail: 105 mm  neck: 86 mm }
    top-radius: 28 ft
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
recipe v-31 for vennick { because "The first."  top { wood: sitka-31  thickness: 2.80 mm  rig: r2 } }
`;
