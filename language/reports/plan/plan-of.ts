/** The plan of an instrument: everything that is known of it drawn, everything else named. */
import type { Definition, Value } from '../../facts/facts.js';
import { type Change, type Held, isWithin } from '../../recipes/instrument/instrument.js';
import type { Side } from '../../recipes/instrument/comparison.js';
import { sideOf } from '../../recipes/instrument/sides.js';
import { sameValue, saysNone } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import { english } from '../../wording/wording.js';
import { writeOnPaper } from '../on-paper.js';
import { Attempts } from './attempt.js';
import type { Ask } from '../../recipes/evaluation/evaluation.js';
import { partInWords, pathInWords } from '../part-words.js';
import * as body from './body-view.js';
import { braceShapes, notchShapes, profilesOf } from './braces-view.js';
import * as bridge from './bridge-view.js';
import { outlineRing } from './drawn-from.js';
import * as neck from './neck-view.js';
import type { ChangedPart, Label, NotDrawn, Plan, Shape, View } from './plan.js';
import { crossingDimensions, type DimensionWords, PLAN_DIMENSIONS, type Told } from './plan-dimensions.js';
import * as side from './side-view.js';
import { thicknessDrawn } from './thickness-view.js';
import { dimensionWords } from './drawing-words.js';

/** Undefined when there is no model, recipe or build of this name. */
export function planOf(workshop: Workshop, name: string): Plan | undefined {
  const instrument = sideOf(workshop, name);
  const definition = instrument && workshop.shelf.find(instrument.kind, name);
  if (!instrument || !definition) return undefined;
  return planOfSide(workshop, instrument, definition);
}

/** `values` may be those of an order: what was chosen in place of what the recipe says. */
export function planOfSide(workshop: Workshop, instrument: Side, definition: Definition): Plan {
  const draft = new Draft(workshop, instrument);
  const views = (['top', 'back', 'side'] as const).map((view) => draft.view(view));
  const braces = [...draft.bracesOf('bracing'), ...draft.bracesOf('back-bracing')];
  return {
    name: instrument.name,
    views,
    profiles: profilesOf(braces, (part) => partInWords(part, workshop.wording)),
    changed: changedParts(workshop, instrument, definition),
    missing: draft.missing,
  };
}

class Draft {
  readonly missing: readonly NotDrawn[];
  readonly bracesOf: Attempts['bracesOf'];
  private readonly attempts: Attempts;
  private readonly ask: Ask;
  private readonly words: DimensionWords;

  constructor(
    workshop: Workshop,
    private readonly instrument: Side,
  ) {
    this.attempts = new Attempts(instrument.evaluation, workshop.wording.told);
    this.missing = this.attempts.missing;
    this.bracesOf = this.attempts.bracesOf;
    this.ask = this.attempts.ask;
    this.words = dimensionWords(workshop.settings(), workshop.wording);
  }

  view(name: 'top' | 'back' | 'side'): View {
    return name === 'side' ? this.sideView() : this.plateView(name);
  }

  private plateView(plate: 'top' | 'back'): View {
    const braces = this.bracesOf(plate === 'top' ? 'bracing' : 'back-bracing');
    const { ask, words } = this;
    const shapes: Shape[] = [];
    const labels: Label[] = [];
    const dimensions: Told[] = [];
    const draw = (part: string, made: () => readonly Shape[]) => shapes.push(...this.attempts.of(part, made));
    draw('body', () => body.outlineShapes(ask));
    draw('body', () => body.centreLine(ask));
    this.if('sides', draw, () => body.sideShapes(ask));
    this.if(plate === 'top' ? 'lining' : 'back-lining', draw, () => body.liningShapes(ask, plate));
    this.if('neck-block', draw, () => body.neckBlock(ask));
    this.if('tail-block', draw, () => body.tailBlock(ask));
    shapes.push(...braceShapes(braces), ...notchShapes(braces));
    if (plate === 'top') {
      this.if('soundhole', draw, () => body.holeShapes(ask));
      if (this.tells('rosette.inner-diameter')) draw('rosette', () => body.rosetteShapes(ask));
      this.if('bridge.plate', draw, () => bridge.bridgePlateShapes(ask));
      this.if('bridge', draw, () => bridge.bridgeShapes(ask));
      if (this.tells('saddle.string-spread') || this.tells('saddle.length')) {
        draw('saddle', () => bridge.saddleShapes(ask));
        if (ask.word('bridge.kind') === 'tie-block') draw('bridge', () => bridge.tieBlock(ask));
        else if (ask.word('bridge.kind') !== 'pinless') this.if('bridge.pins', draw, () => bridge.pinShapes(ask));
        draw('strings', () => neck.stringShapes(ask));
      }
      this.neckPlan(draw);
    }
    draw(plate, () => body.grainShapes(ask, plate));
    if (this.tells(`${plate}.thickness`)) {
      for (const drawn of this.attempts.of(plate, () => [
        thicknessDrawn(ask, plate, (metres) => words.length(metres * 1000)),
      ])) {
        shapes.push(...drawn.shapes);
        labels.push(...drawn.labels);
      }
    }
    for (const { part, of } of PLAN_DIMENSIONS) {
      if (plate === 'back' && part !== 'body') continue;
      // What is not known is named with the part itself.
      dimensions.push(...this.attempts.of('', () => of(ask, words)));
    }
    dimensions.push(...crossingDimensions(braces, words));
    return { name: plate, shapes, labels, dimensions };
  }

  private neckPlan(draw: (part: string, made: () => readonly Shape[]) => void): void {
    const { ask } = this;
    if (!this.has('frets') && !this.has('fingerboard') && !this.has('nut')) return;
    draw('fingerboard', () => neck.boardShapes(ask));
    this.if('frets', draw, () => neck.fretShapes(ask));
    if (this.tells('nut.thickness')) draw('nut', () => neck.nutShapes(ask));
    if (this.tells('headstock.length')) draw('headstock', () => neck.headShapes(ask));
  }

  private sideView(): View {
    const { ask, words } = this;
    const shapes: Shape[] = [];
    const draw = (part: string, made: () => readonly Shape[]) => shapes.push(...this.attempts.of(part, made));
    draw('body', () => side.sideOutline(ask));
    draw('body', () => side.rimEdges(ask, outlineRing(ask)));
    this.if('bridge', draw, () => side.bridgeFromSide(ask));
    if (this.tells('fingerboard.thickness')) draw('fingerboard', () => side.neckFromSide(ask));
    return {
      name: 'side',
      shapes,
      labels: [],
      dimensions: this.attempts.of('', () => side.sideDimensions(ask, words.length)),
    };
  }

  private if(part: string, draw: (part: string, made: () => readonly Shape[]) => void, made: () => readonly Shape[]) {
    if (this.has(part)) draw(part, made);
  }

  private has(part: string): boolean {
    return [...this.instrument.values.values()].some(({ path, value }) => isWithin(path, part) && !saysNone(value));
  }

  private tells(path: string): boolean {
    return this.instrument.evaluation.number(path) !== undefined;
  }
}

/** Which parts this very definition says something else of than what it comes from. */
function changedParts(
  workshop: Workshop,
  { kind, name, values }: Side,
  definition: Definition,
): readonly ChangedPart[] {
  const changes = kind === 'recipe' ? (workshop.instrument(name)?.changes ?? []) : [];
  const told = new Map<string, Set<string>>();
  const tell = (path: string, sentence: string) => {
    const part = workshop.catalogue.partOf(path) ?? path;
    told.set(part, (told.get(part) ?? new Set()).add(sentence));
  };
  for (const change of changes) tellChange(workshop, change, tell);
  for (const held of values.values()) {
    // What a hold solved, and what a build made otherwise.
    if (held.from.definition !== definition && held.via !== 'solved') continue;
    if (held.via === 'solved' ? held.from.definition === definition : held.via === 'built')
      tellHeld(workshop, held, tell);
  }
  return [...told].map(([part, sentences]) => ({ part, changes: [...sentences] }));
}

function tellChange(workshop: Workshop, change: Change, tell: (path: string, sentence: string) => void): void {
  const { text } = workshop.wording;
  if (change.kind === 'add') tell(change.path, text(english('added')));
  else if (change.kind === 'drop') tell(change.path, text(english('left out')));
  else if (change.after && !sameValue(change.before?.value, change.after.value)) {
    tellHeld(workshop, { ...change.after, before: change.before }, tell);
  }
}

function tellHeld(workshop: Workshop, { path, value, before }: Held, tell: (path: string, sentence: string) => void) {
  const part = workshop.catalogue.partOf(path) ?? '';
  const word = pathInWords(path.slice(part === '' ? 0 : part.length + 1), workshop.wording);
  const written = (each: Value) => writeOnPaper(path, each, workshop.settings());
  const now = written(value);
  tell(path, `${word} ${before ? `${written(before.value)} → ` : ''}${now}`.trim());
}
