/** Where the power of a steady force goes, mode by mode: the balance that the body must keep. */
import { add, complex, divide, power, scale, subtract } from '../../../language/mechanics/voice/complex.js';
import {
  radiationResistance,
  response,
  type SoundingBody,
  springOf,
} from '../../../language/mechanics/voice/sounding-body.js';

export interface PowerBalance {
  /** W: given by a force of amplitude 1 N at the saddle. */
  readonly given: number;
  readonly radiated: number;
  /** W, by mode of `modes`. */
  readonly lost: readonly number[];
}

/** Where the power of a steady force of amplitude 1 N at ω goes: `given` = `radiated` + Σ `lost`, to rounding. */
export function powerBalance(body: SoundingBody, string: number, omega: number): PowerBalance {
  const { mobility, flow, squeezed } = response(body, string, omega);
  const resistance = radiationResistance(body, omega);
  const pressure = scale(squeezed, springOf(body));
  const outside = scale(flow, resistance);
  const lost = body.modes.map((mode) => {
    const against = scale(add(mode.main ? pressure : complex(0), outside), mode.volume);
    const drive = subtract(complex(mode.atStrings[string] ?? 0), against);
    const stiffness = complex((2 * Math.PI * mode.frequency) ** 2 - omega * omega, omega * mode.damping);
    return (mode.damping * omega * omega * power(divide(drive, stiffness))) / 2;
  });
  return { given: mobility.re / 2, radiated: (resistance * power(flow)) / 2, lost };
}
