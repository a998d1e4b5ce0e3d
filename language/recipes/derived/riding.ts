/** What rides on a plate without being glued in as wood: devices, guard, rosette, and the finish. */
import { FILM_DENSITY } from '../../mechanics/wood/finish-film.js';
import type { Film, RidingMass } from '../../mechanics/plate/index.js';
import type { PlateParameter } from '../evaluation/analyst.js';
import type { Ask } from '../evaluation/evaluation.js';
import { bodyOf } from './layout/outline.js';
import { soundholeIfAny } from './layout/soundhole.js';
import { hasBackStrip, massIfThere, rosetteRing } from './glued-parts.js';
import { type OptionMass, optionMasses } from './option-masses.js';

export interface Riding {
  readonly masses: readonly RidingMass[];
  readonly film?: Film;
  readonly parameters: readonly PlateParameter[];
}

/** Of what the bridge carries nothing is here: it is in the bridge's own mass. */
export function ridingOn(ask: Ask, plate: 'top' | 'back'): Riding {
  const masses: RidingMass[] = [];
  const parameters: PlateParameter[] = [];
  for (const option of optionMasses(ask)) {
    if (option.on !== plate) continue;
    parameters.push({ path: option.massPath, parameter: { part: 'riding', index: masses.length, quantity: 'mass' } });
    masses.push(placed(ask, plate, option));
  }
  const film = filmOn(ask, plate, parameters);
  return {
    masses: [...masses, ...(plate === 'top' ? rosette(ask) : backStrip(ask))],
    ...(film ? { film } : {}),
    parameters,
  };
}

/** A guard lies on the treble side of the hole; what is only said to sit on a plate is taken to sit where it moves little: at its upper bout. */
function placed(ask: Ask, plate: 'top' | 'back', { path, mass }: OptionMass): RidingMass {
  const hole = plate === 'top' ? soundholeIfAny(ask) : undefined;
  if (path === 'pickguard' && hole) {
    ask.assume('the pickguard is taken to lie beside the soundhole on the treble side');
    const [x, y] = hole.centre;
    return { name: path, x: x - 0.6 * hole.along, y: y + 0.75 * hole.across, mass, radius: GUARD };
  }
  ask.assume('a device that sits on a plate is taken to sit at its upper bout, on the bass side');
  const { outline } = bodyOf(ask);
  const x = 0.85 * outline.length;
  return { name: path, x, y: -0.6 * outline.halfWidth(x), mass };
}

/** m: a guard is about a hand wide. (common practice) */
const GUARD = 0.04;
/** A ring as points around the hole. */
const AROUND = 12;

/** What a rosette weighs beyond the wood it takes the place of, around the hole; nothing where it is not weighed. */
function rosette(ask: Ask): readonly RidingMass[] {
  const ring = rosetteRing(ask);
  const hole = soundholeIfAny(ask);
  if (!ring || !hole || !(ring.more > 0)) return [];
  const { radius, more } = ring;
  return Array.from({ length: AROUND }, (_, i): RidingMass => {
    const angle = (2 * Math.PI * (i + 0.5)) / AROUND;
    const [x, y] = [hole.centre[0] + radius * Math.cos(angle), hole.centre[1] + radius * Math.sin(angle)];
    return { name: 'rosette', x, y, mass: more / AROUND };
  });
}

/** The strip over the back's joint, as points along the centre line: across the joint it carries hardly more than the plate does. */
function backStrip(ask: Ask): readonly RidingMass[] {
  const mass = massIfThere(ask, 'back.reinforcement', hasBackStrip(ask));
  if (mass === 0) return [];
  const step = ask.number('body.length') / ALONG;
  return Array.from({ length: ALONG }, (_, i): RidingMass => {
    return { name: 'strip over the joint', x: (i + 0.5) * step, y: 0, mass: mass / ALONG };
  });
}

const ALONG = 24;

/** Poisson's ratio of a cured coat: 0.35 to 0.4 for glassy polymers. (common handbook value, from memory) */
const FILM_POISSON = 0.35;

function filmOn(ask: Ask, plate: 'top' | 'back', parameters: PlateParameter[]): Film | undefined {
  if (plate === 'top' && ask.value('finish.top-mass') !== undefined) return weighedFilm(ask, parameters);
  const own = plate === 'top' ? ask.numberIf('finish.top-film') : undefined;
  const path = own === undefined ? 'finish.film' : 'finish.top-film';
  const film = own ?? ask.numberIf('finish.film');
  if (film === undefined || !(film > 0)) return undefined;
  const density = ask.numberIf('finish.density') ?? usualDensity(ask);
  const weight = { part: 'film', quantity: 'massPerArea' } as const;
  parameters.push({ path, parameter: weight, factor: density });
  parameters.push({ path: 'finish.density', parameter: weight, factor: film });
  const modulus = ask.numberIf('finish.modulus');
  if (modulus === undefined) return { massPerArea: film * density };
  const stretch = 1 / (1 - FILM_POISSON ** 2);
  const stiff = { part: 'film', quantity: 'stiffness' } as const;
  parameters.push({ path, parameter: stiff, factor: modulus * stretch });
  parameters.push({ path: 'finish.modulus', parameter: stiff, factor: film * stretch });
  return { massPerArea: film * density, stiffness: modulus * film * stretch };
}

/** What the scale says of the finish on the top comes before what its thickness says. */
function weighedFilm(ask: Ask, parameters: PlateParameter[]): Film {
  const area = ask.number('top.area');
  const weight = { part: 'film', quantity: 'massPerArea' } as const;
  parameters.push({ path: 'finish.top-mass', parameter: weight, factor: 1 / area });
  return { massPerArea: ask.number('finish.top-mass') / area };
}

function usualDensity(ask: Ask): number {
  ask.assume('the dry film is taken to weigh 1200 kg/m³');
  return FILM_DENSITY;
}
