/** What the options on an instrument weigh, and where: devices, guard, bevel, pins. */
import type { Ask } from '../evaluation/evaluation.js';
import { saysNone } from '../instrument/values.js';

export interface OptionMass {
  /** The part: `electronics.battery`. */
  readonly path: string;
  /** The path of its mass: `electronics.battery.mass`. */
  readonly massPath: string;
  /** kg */
  readonly mass: number;
  /** The part that carries it: `neck-block`. */
  readonly on: string;
}

/** Where a device sits when nobody says so. (common practice) */
const USUAL: ReadonlyMap<string, string> = new Map([
  ['pickup', 'bridge-plate'],
  ['battery', 'neck-block'],
]);

const OPTIONS: readonly {
  readonly path: string;
  readonly mass: string;
  readonly on: string;
  readonly usual: string;
}[] = [
  ...['pickup', 'second-pickup', 'microphone', 'preamp', 'battery'].map((device) => ({
    path: `electronics.${device}`,
    mass: `electronics.${device}.mass`,
    on: `electronics.${device}.on`,
    usual: USUAL.get(device) ?? 'sides',
  })),
  { path: 'electronics.jack', mass: 'electronics.jack-mass', on: 'electronics.jack-on', usual: 'tail-block' },
  { path: 'pickguard', mass: 'pickguard.mass', on: '', usual: 'top' },
  { path: 'arm-bevel', mass: 'arm-bevel.mass', on: '', usual: 'sides' },
  { path: 'end-pin', mass: 'end-pin.mass', on: '', usual: 'tail-block' },
];

/** Each option that is there. What is named but not weighed is asked for: it is unknown, not weightless. */
export function optionMasses(ask: Ask): readonly OptionMass[] {
  return OPTIONS.filter(({ path, mass }) => isThere(ask, path, mass)).map(({ path, mass, on, usual }) => ({
    path,
    massPath: mass,
    mass: ask.number(mass),
    on: (on === '' ? undefined : ask.word(on)) ?? usual,
  }));
}

/** Paths of the masses of the devices that are fixed at the bridge; what is not weighed there is not asked for. */
export function weighedAtBridge(ask: Ask): readonly string[] {
  return OPTIONS.filter(({ path, mass }) => isThere(ask, path, mass)).flatMap(({ path, mass, on, usual }) => {
    const said = on === '' ? undefined : ask.word(on);
    if (!AT_BRIDGE.includes(said ?? usual)) return [];
    if (said === undefined) ask.assume('a pickup is taken to sit on the bridge plate');
    return path.startsWith('electronics.') ? [mass] : [];
  });
}

function isThere(ask: Ask, path: string, mass: string): boolean {
  if (saysNone(ask.value(path)) || saysNone(ask.value(`${path}.kind`))) return false;
  return SAYS_SO.some((word) => ask.value(`${path}${word}`) !== undefined) || ask.value(mass) !== undefined;
}

/** Any of these said of an option means that it is there. */
const SAYS_SO = ['', '.kind', '.on', '.width', '.depth', '.material'];

/** Parts that load the bridge: what is fixed to them moves with it. */
export const AT_BRIDGE: readonly string[] = ['bridge', 'bridge.plate', 'bridge-plate', 'saddle'];
