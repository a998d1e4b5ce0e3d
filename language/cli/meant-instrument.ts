/** Names a maker gives on the command line: what they may have meant when there is no such name. */
import { didYouMean } from '../quantities/suggest.js';
import type { DefinitionKind } from '../facts/facts.js';
import { WrongUse } from './io.js';
import { type Shop, shown } from './open-shop.js';
import type { Io } from './io.js';
import { sentences } from '../wording/wording.js';

/** Says that there is nothing of this name among these kinds, and names what is near, or what there is. */
export function noSuchName(name: string, kinds: readonly DefinitionKind[], shop: Shop, io: Io): WrongUse {
  const { say, or, some } = io.wording;
  const names = kinds.flatMap((kind) => shop.shelf.names(kind));
  const near = didYouMean(name, names);
  const other = shop.shelf.kindsOf(name).find((kind) => !kinds.includes(kind));
  const folder = shown(shop.folder, io);
  const isHere = folder === '.';
  const recipes = shop.shelf.names('recipe');
  const list =
    recipes.length === 0 ? io.wording.text('none') : recipes.length <= 8 ? recipes.join(', ') : some(recipes, 8);
  return new WrongUse(
    sentences(
      other === undefined
        ? isHere
          ? say`There is nothing called ${name} here.`
          : say`There is nothing called ${name} in ${folder}.`
        : isHere
          ? say`${name} is of kind ${other}, not ${or(kinds)}, here.`
          : say`${name} is of kind ${other}, not ${or(kinds)}, in ${folder}.`,
      near.length > 0
        ? say`Did you mean ${or(near)}?`
        : isHere
          ? say`The recipes here are: ${list}.`
          : say`The recipes in ${folder} are: ${list}.`,
    ),
  );
}
