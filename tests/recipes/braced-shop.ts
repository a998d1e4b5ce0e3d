/** A braced instrument with a solver at hand, for tests of what takes one. */
import { openWorkshop, type OpenWorkshop } from '../../language/shop.js';
import type { Analyst } from '../../language/recipes/evaluation/analyst.js';
import { ImmediateAnalyst } from '../../language/recipes/evaluation/immediate-analyst.js';
import type { Memo } from '../../language/recipes/shelf/memo.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import { TOPS, VENNICK } from './shop-of.js';

const parser = createParser();

/** One for all: a plate solved for one test is known in the next. */
const immediate = new ImmediateAnalyst();

/** A model braced top and back, its wood and strings, and `v-1`, which leaves nothing to be wished for. */
export const BRACED = `${VENNICK.replace(
  'bridge { mass: 27 g',
  `back { wood: maple-1  thickness: 3 mm }
  back-bracing {
    wood: billet-1
    back-1 { from: (300 mm, -121 mm)  to: (300 mm, 121 mm)  width: 7 mm  height: 14 mm  profile: parabolic }
    back-2 { from: (150 mm, -170 mm)  to: (150 mm, 170 mm)  width: 16 mm  height: 9 mm  profile: parabolic }
  }
  sides { wood: maple-1  thickness: 2.1 mm }
  neck.join-fret: 14
  bridge { wood: rosewood-1  mass: 27 g`,
)
  .replace('bracing {\n    x-bass', 'bracing {\n    wood: billet-1\n    x-bass')
  // Ends at the lining, as a maker has them.
  .replaceAll('(78 mm, -150 mm)', '(70 mm, -175 mm)')
  .replaceAll('(78 mm, 150 mm)', '(70 mm, 175 mm)')
  .replaceAll('(405 mm, 92 mm)', '(405 mm, 138 mm)')
  .replaceAll('(405 mm, -92 mm)', '(405 mm, -138 mm)')}
${TOPS}
wood billet-1 is sitka-spruce { use: brace  density: 412 kg/m³  modulus.along: 11.4 GPa }
wood maple-1 is sugar-maple { use: back  density: 630 kg/m³ }
wood rosewood-1 is indian-rosewood { use: bridge  density: 840 kg/m³ }
recipe v-1 for vennick { because "First."  top { wood: sitka-31  thickness: 2.80 mm } }
`;

export interface BracedShop extends OpenWorkshop {
  /** Replaces the text the shop was made with, `file:///own.bookmatch`. */
  put(text: string): void;
}

export const OWN = 'file:///own.bookmatch';

export function bracedShop(text: string, analyst: (memo: Memo) => Analyst = () => immediate): BracedShop {
  const opened = openWorkshop({ parser, analyst });
  const put = (own: string) => opened.shelf.put(readFile(OWN, own, parser));
  opened.shelf.put(readFile('file:///braced.bookmatch', BRACED, parser));
  put(text);
  return { ...opened, put };
}
