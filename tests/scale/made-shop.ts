/** A made-up shop of any size: chains of recipes on one model, each with the changes makers make. */
import { readFileSync } from 'node:fs';

/** What goes into one file: a chain, a recipe (the file has its name), or every recipe there is (`all`). */
export type Parted = 'by chain' | 'by recipe' | 'in one file';

/** Files of a shop with `chains` chains of `depth` recipes each. */
export function madeShop(chains: number, depth: number, parted: Parted = 'by chain'): ReadonlyMap<string, string> {
  const example = (name: string) => readFileSync(`examples/hollin-reach/${name}`, 'utf8');
  const files = new Map<string, string>();
  for (const name of ['shop', 'woods', 'vennick']) files.set(uriOf(name), example(`${name}.bookmatch`));
  const whole: string[] = [];
  for (let chain = 0; chain < chains; chain++) {
    const recipes = recipesOf(chain, depth);
    if (parted === 'by chain') files.set(uriOf(`chain-${chain}`), fileOf(recipes));
    else if (parted === 'in one file') whole.push(...recipes);
    else recipes.forEach((text, place) => files.set(uriOf(recipeName(chain, place)), fileOf([text])));
  }
  if (parted === 'in one file') files.set(uriOf('all'), fileOf(whole));
  return files;
}

function fileOf(recipes: readonly string[]): string {
  return `${recipes.join('\n\n')}\n`;
}

export function uriOf(name: string): string {
  return `file:///made-shop/${name}.bookmatch`;
}

export function recipeName(chain: number, place: number): string {
  return `c${chain}-${place}`;
}

/** The texts of one chain's recipes, from the root on. */
export function recipesOf(chain: number, depth: number): readonly string[] {
  const texts = [
    `recipe ${recipeName(chain, 0)} for vennick {
  because "The base of chain ${chain}."
  top { wood: sitka-31   thickness: 2.80 mm   rig: r2 }
}`,
  ];
  const tops = ['sitka-31', 'sitka-32', 'sitka-33', 'engelmann-37', 'norway-38'];
  let top = 0;
  for (let place = 1; place < depth; place++) {
    const head = `recipe ${recipeName(chain, place)} from ${recipeName(chain, place - 1)} {`;
    if (place % 3 === 0) {
      const next = (top + 1 + (chain % 3)) % tops.length;
      texts.push(`${head}
  because "Another set."
  change top.wood: ${tops[top]} -> ${tops[next]}
  hold top.stiffness.along by top.thickness
  expect top.mass: below 190 g
}`);
      top = next;
    } else if (place % 3 === 1) {
      texts.push(`${head}
  because "A little lower."
  together "lower X" {
    change bracing.x-bass.height: by -0.${(chain % 4) + 2} mm
    change bracing.x-treble.height: by -0.${(chain % 4) + 2} mm
  }
}`);
    } else {
      texts.push(`${head}
  because "Lighter bridge."
  change bridge.mass: by -1 g
}`);
    }
  }
  return texts;
}
