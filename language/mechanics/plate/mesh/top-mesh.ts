/** What a mesh of a top is made of. Lengths in m. */
export interface TopMesh {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Four nodes per quadrilateral, counter-clockwise. */
  readonly quads: Int32Array;
  /** Per quadrilateral, bit i set when patch i covers it. */
  readonly patchesOf: Int32Array;
  /** Two nodes per piece of a brace, in order along it. */
  readonly ribs: Int32Array;
  /** Brace of each piece. */
  readonly ribBrace: Int32Array;
  /** Quadrilaterals on the two sides of each piece, −1 for none. */
  readonly ribSides: Int32Array;
  /** Nodes on the lines on which the plate rests. */
  readonly rested: Int32Array;
  /** Two nodes per side of the outline; holes are not in it. */
  readonly rim: Int32Array;
  /** Sides of the outline and then of the holes that have plate on one side only: quadrilateral and side number (0: first to second corner). */
  readonly rimSides: Int32Array;
  readonly holeSides: Int32Array;
  /** Per node, the patch that moves it when drawn in further, or −1; and the movement per metre. */
  readonly movedBy: Int32Array;
  readonly moveX: Float64Array;
  readonly moveY: Float64Array;
  /** Inset of each patch for which `x`, `y` hold, m. */
  readonly insets: Float64Array;
  /** Least sine of a corner: 1 rectangle, above 0 everywhere. */
  readonly worstCorner: number;
}
