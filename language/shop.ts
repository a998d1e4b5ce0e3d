/** A workshop ready for work: parser, shelf with the species library on it, questions and checks. One per folder. */
import { catalogue } from './catalogue/catalogue.js';
import species from './catalogue/species.bookmatch?raw';
import { Checks } from './checks/check.js';
import type { Analyst } from './recipes/evaluation/analyst.js';
import { Bookshelf } from './recipes/shelf/bookshelf.js';
import type { Memo } from './recipes/shelf/memo.js';
import { type BookmatchParser, createParser, readFile } from './recipes/shelf/reader.js';
import { Workshop } from './recipes/workshop.js';
import { ENGLISH, type Wording } from './wording/wording.js';

export interface OpenWorkshop {
  readonly parser: BookmatchParser;
  readonly shelf: Bookshelf;
  readonly workshop: Workshop;
  readonly checks: Checks;
}

/** Where the species library is shown; it belongs to no folder and cannot be changed. */
export const SPECIES_URI = 'bookmatch-library:/species.bookmatch';
export const SPECIES_TEXT: string = species;

export interface WorkshopOptions {
  /** The language it answers in; a parser given here must speak it too. */
  readonly wording?: Wording;
  readonly parser?: BookmatchParser;
  /** Who works out resonances; nobody, when absent. */
  readonly analyst?: (memo: Memo) => Analyst;
  /** Where a fault of our own is written down. */
  readonly log?: ((words: string) => void) | undefined;
}

export function openWorkshop(options: WorkshopOptions = {}): OpenWorkshop {
  const { wording = ENGLISH, parser = createParser({ wording }), analyst, log } = options;
  const shelf = new Bookshelf();
  shelf.putLibrary(readFile(SPECIES_URI, species, parser));
  const workshop = new Workshop(shelf, catalogue, analyst?.(shelf.memo), wording, log);
  return { parser, shelf, workshop, checks: new Checks(workshop) };
}
