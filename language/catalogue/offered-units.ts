/**
 * The units the catalogue offers first and the units its ranges are quoted in. `si = value * factor + (offset ?? 0)`.
 * A test holds every row against the unit table in `quantities`.
 */
export const OFFERED_UNITS = {
  mm: { dimension: 'length', factor: 1e-3 },
  cm: { dimension: 'length', factor: 1e-2 },
  in: { dimension: 'length', factor: 0.0254 },
  ft: { dimension: 'length', factor: 0.3048 },
  mil: { dimension: 'length', factor: 2.54e-5 },
  'cm²': { dimension: 'area', factor: 1e-4 },
  'm²': { dimension: 'area', factor: 1 },
  L: { dimension: 'volume', factor: 1e-3 },
  g: { dimension: 'mass', factor: 1e-3 },
  kg: { dimension: 'mass', factor: 1 },
  'kg/m³': { dimension: 'density', factor: 1 },
  'g/m': { dimension: 'lineDensity', factor: 1e-3 },
  N: { dimension: 'force', factor: 1 },
  'N·m': { dimension: 'torque', factor: 1 },
  'kN/m': { dimension: 'stiffness', factor: 1e3 },
  MPa: { dimension: 'pressure', factor: 1e6 },
  GPa: { dimension: 'pressure', factor: 1e9 },
  Hz: { dimension: 'frequency', factor: 1 },
  deg: { dimension: 'angle', factor: Math.PI / 180 },
  '°C': { dimension: 'temperature', factor: 1, offset: 273.15 },
  '%RH': { dimension: 'humidity', factor: 0.01 },
  '%MC': { dimension: 'moisture', factor: 0.01 },
  cents: { dimension: 'interval', factor: 1 / 1200 },
  days: { dimension: 'time', factor: 86_400 },
  's/kg': { dimension: 'mobility', factor: 1 },
  '%': { dimension: 'number', factor: 0.01 },
} as const;

export type OfferedUnit = keyof typeof OFFERED_UNITS;
