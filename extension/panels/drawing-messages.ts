/** Between the drawing panel and its page. */
import type { Drawing, ModeShapes, PlanPicture } from '../../language/server/protocol.js';
import type { Words } from './messages.js';
import type { ModeWords } from './mode-messages.js';

export interface DrawingSubject {
  readonly name: string;
  readonly plate: 'top' | 'back';
  /** Whether mode shapes are wanted; working them out takes the solver a moment. */
  readonly modes: boolean;
}

export interface DrawingContent {
  /** Null: no instrument of that name. */
  readonly drawing: Drawing | null;
  /** The whole plan in marks; null while it is not known. */
  readonly plan: PlanPicture | null;
  /** Of the plate shown. While new ones are worked out, the last ones, marked `waiting`. */
  readonly modes: ModeShapes | null;
  /** The editor can open a page in the browser; otherwise the page is handed over as a file. */
  readonly opensPages: boolean;
}

export type DrawingAction =
  /** Go to the line where a part is written. */
  | { readonly kind: 'go-to'; readonly path: string }
  /** Open this document, which needs nothing but itself, where it can be printed. */
  | { readonly kind: 'print'; readonly html: string }
  /** Save the plan or templates of its parts as a file. */
  | { readonly kind: 'save' }
  | { readonly kind: 'choose'; readonly choice: Partial<Pick<DrawingSubject, 'plate' | 'modes'>> };

export type DrawingWords = Words<
  | keyof ModeWords
  | 'gone'
  | 'print'
  | 'printHint'
  | 'fileName'
  | 'size'
  | 'seen'
  | 'plate'
  | 'top'
  | 'back'
  | 'shown'
  | 'parts'
  | 'modes'
  | 'planTop'
  | 'planBack'
  | 'planSide'
  | 'save'
  | 'layers'
  | 'changedHere'
  | 'zoomIn'
  | 'zoomOut'
  | 'zoomFit'
  | 'measure'
  | 'place'
  | 'apart'
  | 'goTo'
  | 'pointHere'
  | 'thickness'
  | 'thicknessEven'
  | 'thicknessEdge'
  | 'usualBand'
  | 'soundhole'
  | 'bridge'
  | 'bridgePlate'
  | 'brace'
  | 'missing'
  | 'missingPart'
  | 'troublePart'
  | 'outline'
  | 'number'
  | 'width'
  | 'height'
  | 'length'
  | 'mass'
  | 'elevation'
  | 'bracesTop'
  | 'bracesBack'
  | 'noBraces'
  | 'otherParts'
  | 'part'
  | 'figures'
  | 'frequency'
  | 'air'
  | 'movement'
  | 'modesLegend'
  | 'modeDrawn'
  | 'seenAs'
  | 'flat'
  | 'relief'
  | 'reliefOf'
  | 'reliefHint'
  | 'moving'
  | 'littleMotion'
>;
