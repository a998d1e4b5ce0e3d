/** The made-up shops that are timed, written out: as recipes, and once more as YAML. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { madeShop, type Parted, recipeName, recipesOf } from '../made-shop.js';
import { asYaml, recipeSchema } from './yaml-shop.js';

export interface ShopOnDisk {
  /** Path of the folder. */
  readonly folder: string;
  readonly uri: string;
  readonly uriOf: (name: string) => string;
  /** Texts by URI. */
  readonly texts: ReadonlyMap<string, string>;
}

/** Not in a hidden folder: the peer leaves those out. */
const ROOT = join(tmpdir(), 'bookmatch-bench');

export function writeShop(name: string, chains: number, depth: number, parted: Parted): ShopOnDisk {
  const named = [...madeShop(chains, depth, parted)].map(([uri, text]) => [basename(uri), text] as const);
  return written(name, named, '.bookmatch');
}

/** One recipe a file; wood sets and model, which the others have too, are left out: the YAML has so much less to read. */
export function writeYamlShop(name: string, chains: number, depth: number): ShopOnDisk & { readonly schema: string } {
  const recipes = Array.from({ length: chains }, (_, chain) =>
    recipesOf(chain, depth).map((text, place) => [`${recipeName(chain, place)}.yaml`, asYaml(text)] as const),
  );
  const shop = written(name, recipes.flat(), '.yaml');
  const schema = join(shop.folder, 'recipe.schema.json');
  writeFileSync(schema, JSON.stringify(recipeSchema()));
  return { ...shop, schema: pathToFileURL(schema).href };
}

function written(name: string, files: readonly (readonly [string, string])[], ending: string): ShopOnDisk {
  const folder = resolve(ROOT, name);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const uriOf = (file: string) => pathToFileURL(join(folder, file)).href;
  for (const [file, text] of files) writeFileSync(join(folder, file), text);
  const texts = new Map(files.map(([file, text]) => [uriOf(file), text]));
  return { folder, uri: pathToFileURL(folder).href, uriOf: (file) => uriOf(file + ending), texts };
}
