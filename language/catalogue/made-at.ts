/** At which stage a value is made, which is not always the stage after which it is costly to change. (common practice) */
import type { Property, Stage } from './property.js';

/** The first that fits a path, as a part or a whole path. */
const MADE_AT: readonly (readonly [begins: string, stage: Stage])[] = [
  ['top.wood', 'wood'],
  ['back.wood', 'wood'],
  ['sides.wood', 'wood'],
  ['neck.wood', 'wood'],
  ['bracing.wood', 'wood'],
  ['back-bracing.wood', 'wood'],
  ['bridge.wood', 'wood'],
  ['fingerboard.wood', 'wood'],
  ['back-strip', 'joining'],
  ['rosette', 'rosette'],
  ['soundhole', 'outline'],
  ['top', 'thicknessing'],
  ['back', 'thicknessing'],
  ['sides', 'thicknessing'],
  ['body.top-radius', 'bracing'],
  ['body.back-radius', 'bracing'],
  ['body.depth', 'rim'],
  ['body', 'outline'],
  ['cutaway', 'rim'],
  ['bracing', 'bracing'],
  ['back-bracing', 'bracing'],
  ['bridge.plate', 'bracing'],
  ['side-bracing', 'rim'],
  ['lining', 'rim'],
  ['back-lining', 'rim'],
  ['neck-block', 'rim'],
  ['tail-block', 'rim'],
  ['rim', 'rim'],
  ['port', 'rim'],
  ['arm-bevel', 'binding'],
  ['rib-bevel', 'binding'],
  ['binding', 'binding'],
  ['purfling', 'binding'],
  ['back-purfling', 'binding'],
  ['side-purfling', 'binding'],
  ['end-graft', 'binding'],
  ['inlay', 'neck'],
  ['scale', 'neck'],
  ['scale-bass', 'neck'],
  ['scale-treble', 'neck'],
  ['neck.angle', 'neck-angle'],
  ['setup.straightedge', 'neck-angle'],
  ['bridge.station', 'neck-angle'],
  ['bridge.offset', 'neck-angle'],
  ['neck', 'neck'],
  ['headstock', 'neck'],
  ['headplate', 'neck'],
  ['heel-cap', 'neck'],
  ['truss-rod', 'neck'],
  ['fingerboard', 'neck'],
  ['frets', 'neck'],
  ['nut.width', 'neck'],
  ['finish', 'finish'],
  ['label', 'closing'],
];

/** Fitted to what was measured, not made to a size. */
const NOT_MADE = /\.(?:rim-stiffness|damping|loss)$/;

/** Undefined for what nobody makes: records, and figures of the model. What is left is fitted at the setup. */
export function madeAt(property: Property, path: string): Stage | undefined {
  if (property.class === 'record' || NOT_MADE.test(path)) return undefined;
  return MADE_AT.find(([begins]) => path === begins || path.startsWith(`${begins}.`))?.[1] ?? 'setup';
}
