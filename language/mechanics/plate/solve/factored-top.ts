/** A discrete top with its stiffness factored: ready to answer for any load. */
import { assemble, multiplyMass, type NodalMass } from './assembly.js';
import { BLOCK } from '../../linear-algebra/blocks.js';
import type { DiscreteTop } from './discrete.js';
import type { PlateElement } from '../element/plate-element.js';
import { PARTS } from '../element/plate-parts.js';
import { factorise, solveFactored } from '../../linear-algebra/sparse-cholesky.js';
import type { Unknowns } from './degrees-of-freedom.js';

/** Memory that one solver uses for one top after another. */
export class Workspace {
  panels = new Float64Array(0);
  stack = new Float64Array(0);
  /** Parts of the stiffness of each quadrilateral. */
  elements = new Float64Array(0);
  /** Room for what a change of sizes does to them. */
  changes = new Float64Array(0);

  fit({ pattern, quadBase }: Unknowns): void {
    // Ten pairs of nodes per quadrilateral; a change can take two rows, see `elementChanges.ts`.
    const numbers = PARTS * (quadBase.length / 10);
    if (this.elements.length < numbers) {
      this.elements = new Float64Array(numbers);
      this.changes = new Float64Array(2 * numbers);
    }
    if (this.panels.length < pattern.panelSize) this.panels = new Float64Array(pattern.panelSize);
    if (this.stack.length < pattern.stackSize) this.stack = new Float64Array(pattern.stackSize);
  }
}

export interface FactoredTop {
  readonly top: DiscreteTop;
  readonly unknowns: Unknowns;
  /** (rad/s)²: K + shift M is what was factored. */
  readonly shift: number;
  /** Solves in place for a block of four vectors in the order of elimination. Valid until the workspace is used again. */
  readonly solve: (block: Float64Array) => void;
  /** Parts of the stiffness of each quadrilateral, as long as the factor is valid. */
  readonly elements: Float64Array;
  /** Twice as much room. */
  readonly changes: Float64Array;
  /** Y ← M X, block of four. */
  readonly multiply: (x: Float64Array, y: Float64Array) => void;
}

/** A pivot this small beside its diagonal entry means that something is not held. */
const LEAST_PIVOT = 1e-11;

/** Assembles and factors; a sentence when that cannot be done. */
export function factorTop(
  top: DiscreteTop,
  unknowns: Unknowns,
  element: PlateElement,
  workspace: Workspace,
  shift: number,
): FactoredTop | string {
  const { pattern } = unknowns;
  workspace.fit(unknowns);
  const { panels, stack, elements, changes } = workspace;
  const mass = new Float64Array(3 * unknowns.graph.list.length);
  const diagonal = new Float64Array(pattern.unknowns);
  if (assemble(top, unknowns, element, shift, panels, mass, diagonal, elements) >= 0) {
    return 'A thickness has moved the edge of a bridge or bridge plate across another line.';
  }
  for (let i = 0; i < diagonal.length; i++) diagonal[i]! *= LEAST_PIVOT;
  if (factorise(pattern, panels, stack, diagonal) >= 0) {
    return 'Something in the plan is not held by anything, or a stiffness is out of all proportion to the others.';
  }
  const scratch = new Float64Array(BLOCK * pattern.height.reduce((a, b) => Math.max(a, b), 0));
  return {
    top,
    unknowns,
    shift,
    elements,
    changes,
    solve: (block) => solveFactored(pattern, panels, block, scratch),
    multiply: massOperator(unknowns, mass),
  };
}

/** Y ← M X for blocks in the order of elimination. */
export function massOperator(unknowns: Unknowns, mass: NodalMass): FactoredTop['multiply'] {
  return (x, y) => multiplyMass(unknowns, mass, x, y);
}

/** Copies a block of five unknowns per node into the order of elimination; the braces' own rotations are left as they are. */
export function fromNodes({ slot, pattern }: Unknowns, full: Float64Array, x: Float64Array): void {
  const { first } = pattern;
  for (let node = 0; node < first.length; node++) {
    for (let d = 5 * node; d < 5 * node + 5; d++) {
      const s = slot[d]!;
      if (s < 0) continue;
      const to = BLOCK * (first[node]! + s);
      for (let c = 0; c < BLOCK; c++) x[to + c] = full[BLOCK * d + c]!;
    }
  }
}
