/** Cross-sections of braces and the transformed section of glued layers. SI throughout. */
import { MechanicsError, between, computed, positive } from '../error.js';

/** `gabled`: a rectangle below, two even slopes above, up to a ridge or a narrow flat crest. */
export type Profile = 'rectangular' | 'triangular' | 'parabolic' | 'gabled';

export interface Section {
  /** m² */
  readonly area: number;
  /** m, centroid above the glued face */
  readonly centroid: number;
  /** m⁴, about the centroid, for bending up and down */
  readonly secondMoment: number;
}

export interface GabledShape {
  /** Share of the height taken by the slopes; absent: 1/2 (common practice) */
  readonly slopeShare?: number;
  /** Share of the width left flat at the crest; absent: 0, a ridge */
  readonly crestShare?: number;
}

/**
 * Area, centroid and second moment of a brace of `width` (m, at the glued face) and `height` (m). Rectangle b h³/12;
 * triangle b h³/36 at h/3; parabolic segment 2bh/3, centroid 2h/5, 8 b h³/175; gable by parts. Source: textbook
 * section tables (W.C. Young & R.G. Budynas, Roark's Formulas, Appendix A; from memory). Throws on sizes not above
 * zero.
 */
export function braceSection(profile: Profile, width: number, height: number, gable: GabledShape = {}): Section {
  const b = positive('brace width', width);
  const h = positive('brace height', height);
  switch (profile) {
    case 'rectangular':
      return checked({ area: b * h, centroid: h / 2, secondMoment: (b * h ** 3) / 12 });
    case 'triangular':
      return checked({ area: (b * h) / 2, centroid: h / 3, secondMoment: (b * h ** 3) / 36 });
    case 'parabolic':
      return checked({ area: (2 * b * h) / 3, centroid: (2 * h) / 5, secondMoment: (8 * b * h ** 3) / 175 });
    case 'gabled':
      return checked(gabledSection(b, h, gable));
    default:
      throw new MechanicsError('brace profile', 'A brace is rectangular, triangular, parabolic or gabled.');
  }
}

/** One layer of a glued section. */
export interface Layer extends Section {
  /** Pa, along the section's length */
  readonly modulus: number;
}

export interface CompositeSection {
  /** N: Σ E A */
  readonly axial: number;
  /** m: height of the neutral axis, from the same origin as the layers' centroids */
  readonly neutralAxis: number;
  /** N·m²: Σ E I + Σ E A (z − z₀)² */
  readonly bending: number;
}

/**
 * Stiffness of layers glued into one section, by the transformed section and the parallel-axis theorem (S.P.
 * Timoshenko, Strength of Materials, Part I). The glue is rigid and plane sections stay plane. Throws on an empty list
 * or bad layers.
 */
export function compositeSection(layers: readonly Layer[]): CompositeSection {
  if (layers.length === 0) throw new MechanicsError('section', 'A glued section needs at least one layer.');
  let axial = 0;
  let moment = 0;
  for (const { modulus, area, centroid } of layers) {
    const stretch = positive('stiffness', modulus) * positive('area', area);
    axial += stretch;
    moment += stretch * centroid;
  }
  const neutralAxis = moment / axial;
  const bending = layers.reduce(
    (sum, layer) => sum + layer.modulus * (layer.secondMoment + layer.area * (layer.centroid - neutralAxis) ** 2),
    0,
  );
  return {
    axial: computed('stiffness', axial),
    neutralAxis: computed('neutral axis', neutralAxis),
    bending: computed('stiffness', bending),
  };
}

function gabledSection(b: number, h: number, gable: GabledShape): Section {
  const slope = between('share of the height that slopes', gable.slopeShare ?? 0.5, 0, 1) * h;
  const crest = between('share of the width left flat', gable.crestShare ?? 0, 0, 1) * b;
  const wall = h - slope;
  // Trapezium of height s, base b, top c: centroid s (b + 2c) / 3(b + c), I = s³ (b² + 4bc + c²) / 36 (b + c).
  const parts: Section[] = [];
  if (wall > 0) parts.push({ area: b * wall, centroid: wall / 2, secondMoment: (b * wall ** 3) / 12 });
  if (slope > 0) {
    parts.push({
      area: (slope * (b + crest)) / 2,
      centroid: wall + (slope * (b + 2 * crest)) / (3 * (b + crest)),
      secondMoment: (slope ** 3 * (b * b + 4 * b * crest + crest * crest)) / (36 * (b + crest)),
    });
  }
  const area = parts.reduce((sum, part) => sum + part.area, 0);
  const centroid = parts.reduce((sum, part) => sum + part.area * part.centroid, 0) / area;
  const secondMoment = parts.reduce(
    (sum, part) => sum + part.secondMoment + part.area * (part.centroid - centroid) ** 2,
    0,
  );
  return { area, centroid, secondMoment };
}

function checked(section: Section): Section {
  positive('brace section', computed('brace section', section.area));
  computed('brace section', section.secondMoment);
  return section;
}
