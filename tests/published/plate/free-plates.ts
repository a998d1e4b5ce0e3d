/** The spruce plates of the data set as models for the solver. */
import type { ModeLabel, OrthotropicWood, TopModel } from '../../../language/mechanics/plate/index.js';
import { number } from '../table.js';

/** Named as in the data set: nodal lines that run along the grain, then those that cross it. */
export const MODES = ['11', '02', '12', '20', '21', '03', '13', '22'] as const;

/** The solver counts the lines that cross the length first. */
export function labelOf(mode: string): ModeLabel {
  return { along: Number(mode[1]), across: Number(mode[0]) };
}

export function woodOf(row: Record<string, string>): OrthotropicWood {
  return {
    eAlong: number(row, 'EL_Pa'),
    eAcross: number(row, 'ER_Pa'),
    poisson: number(row, 'nu_LR'),
    shearInPlane: number(row, 'GLR_Pa'),
    shearAlong: number(row, 'GLT_Pa'),
    shearAcross: number(row, 'GRT_Pa'),
    density: number(row, 'rho_kg_m3'),
  };
}

export function freePlate(length: number, width: number, thickness: number, wood: OrthotropicWood): TopModel {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    plate: { wood, thickness, grain: 0 },
    edge: { kind: 'free' },
  };
}
