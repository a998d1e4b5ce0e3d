/** Measurements of wood that do not go together, or that no such wood has. */
import { plausible } from '../../catalogue/plausible.js';
import { MechanicsError } from '../../mechanics/error.js';
import { equilibriumMoisture, humidityForMoisture } from '../../mechanics/wood/moisture.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition, QuantityValue } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Written } from '../../recipes/instrument/written.js';
import { tagsOfWood } from '../amounts.js';
import { isInForce } from '../in-force.js';
import { insertLine } from '../mending.js';
import { shown } from '../phrases.js';
import type { Rule } from '../rule.js';
import { english, sentences } from '../../wording/wording.js';
import { citedInBrief } from '../../wording/cited.js';

export const IMPOSSIBLE_WOOD: Rule = {
  code: 'impossible-wood',
  severity: 'warning',
  title: 'A board unlike its species',
  reason:
    'From size, mass and tap tones the density and stiffness follow. When they come out as no such wood has them, one of the measurements is wrong, or in another unit, or the board is something else.',
  bad: `wood spruce-12 is sitka-spruce { use: top  blank: 560 mm x 212 mm x 4.4 mm  mass: 420 g }`,
  good: `wood spruce-12 is sitka-spruce { use: top  blank: 560 mm x 212 mm x 4.4 mm  mass: 220 g }`,
  of: ['wood'],
  check(definition, workshop, report) {
    const { say, text } = workshop.wording;
    const wood = isInForce(definition, workshop) ? workshop.wood(definition.name.text) : undefined;
    if (!wood) return;
    const tags = tagsOfWood(definition, workshop);
    const species = workshop.speciesOf(definition.name.text)?.name.text;
    for (const [figure, evidence] of EVIDENCE) {
      const found = wood.derived(figure);
      const source = evidence.map((path) => writtenAt(path, definition, workshop)).find((one) => one !== undefined);
      const property = workshop.catalogue.property(figure, 'wood');
      if (!found?.known || !source || !property || writtenAt(figure, definition, workshop)) continue;
      const range = plausible(property, tags);
      if (!range || (found.si >= range.low && found.si <= range.high)) continue;
      const usual = say`${shown(range.low, found.quantity)} to ${shown(range.high, found.quantity)}`;
      const name = text(NAMES.get(figure) ?? figure);
      report(
        source.statement.span,
        say`From this, ${name} comes to ${shown(found.si, found.quantity)}; ${species ?? text('such wood')} has ${usual} (${citedInBrief(range.source, workshop.wording)}). Check the sizes, the mass, the tap and their units.`,
        {
          related: ['blank', 'mass']
            .map((path) => writtenAt(path, definition, workshop))
            .filter((one) => one !== undefined)
            .filter((one) => one !== source)
            .map((one) => ({
              place: { definition, span: one.statement.span },
              message: say`goes into the same figure`,
            })),
        },
      );
    }
  },
};

export const HUMIDITY_AND_MOISTURE: Rule = {
  code: 'humidity-and-moisture',
  severity: 'warning',
  title: 'Air and wood that do not go together',
  reason:
    'Left long enough, wood takes the moisture that belongs to the air around it. When the two readings disagree, one instrument is off, or the wood has not settled and will move.',
  bad: `shop marram { climate { humidity: 45 %RH  temperature: 21 °C  moisture: 6 %MC } }`,
  good: `shop marram { climate { humidity: 45 %RH  temperature: 21 °C  moisture: 8.5 %MC } }`,
  of: ['shop', 'wood', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const scope of scopesOf(workshop.written(definition))) {
      const [air, wood] = [scope.get('humidity'), scope.get('moisture')];
      if (!air || !wood) continue;
      const kelvin = scope.get('temperature')?.value.quantity.si ?? workshop.settings().temperature;
      if (kelvin === undefined) continue;
      const balance = balanceOf(kelvin - 273.15, air.value.quantity.si, wood.value.quantity.si);
      if (!balance) continue;
      const allowed =
        SETTLED + (wood.value.quantity.tolerance ?? 0) + balance.moistureFor(air.value.quantity.tolerance ?? 0);
      if (Math.abs(balance.moisture - wood.value.quantity.si) <= allowed) continue;
      const at = writeQuantity(kelvin, DIMENSION.temperature);
      const would = writeQuantity(balance.moisture, DIMENSION.moisture);
      const [here, there] = [air.value.written, wood.value.written];
      const goes =
        balance.humidity === undefined
          ? say`${here} at ${at} goes with ${would}.`
          : say`${here} at ${at} goes with ${would}; ${there} goes with ${writeQuantity(balance.humidity, DIMENSION.humidity)}.`;
      report(
        wood.written.statement.span,
        sentences(goes, say`Check the hygrometer and the moisture meter, or let the wood settle.`),
        { related: [{ place: { definition, span: air.written.statement.span }, message: say`the air` }] },
      );
    }
  },
};

export const DEFLECTION_WITHOUT_RIG: Rule = {
  code: 'deflection-without-rig',
  severity: 'warning',
  title: 'A deflection without its rig',
  reason:
    'How far a plate sags depends on the span, the load, where it hangs and the width of the plate. Without them the figure cannot be turned into a stiffness or compared with another.',
  bad: `wood spruce-12 is sitka-spruce { blank: 560 mm x 212 mm x 4.4 mm  mass: 220 g  deflection.along: 7.2 mm }`,
  good: `rig bench { span: 500 mm  load: 2.268 kg  at: middle  width: 400 mm }
wood spruce-12 is sitka-spruce { blank: 560 mm x 212 mm x 4.4 mm  mass: 220 g  deflection { along: 7.2 mm  thickness: 2.8 mm  rig: bench } }`,
  of: ['wood', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const written = workshop.written(definition);
    const rigPath = definition.kind === 'wood' ? 'deflection.rig' : 'rig';
    const rigs = workshop.shelf.names('rig');
    for (const one of written) {
      if (one.role !== 'value' || !/^deflection\.(along|across|bridge)$/.test(one.canonical)) continue;
      const hasRig = written.some(
        (other) => other.canonical === rigPath && (!other.occasion || other.occasion === one.occasion),
      );
      if (hasRig) continue;
      report(
        one.path.span,
        say`In which rig was this read? Name it: \`${rigPath}: ${rigs[0] ?? '…'}\`. Without it the sag says nothing about stiffness.`,
        {
          fixes: rigs.slice(0, 3).map((rig) => ({
            title: say`Add \`${rigPath}: ${rig}\``,
            edits: [insertLine(definition, `${rigPath}: ${rig}`)],
          })),
        },
      );
    }
  },
};

/** Computed figures with the measurements that speak for them, best first. */
const EVIDENCE: readonly (readonly [string, readonly string[]])[] = [
  ['density', ['mass']],
  ['modulus.along', ['tap.along', 'deflection.along']],
  ['modulus.across', ['tap.across', 'deflection.across']],
  ['modulus.twist', ['tap.twist']],
];

const NAMES: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    'modulus.along': english('the modulus along the grain'),
    'modulus.across': english('the modulus across the grain'),
    'modulus.twist': english('the shear modulus'),
  }),
);

/** Wood within one per cent of moisture of its balance is as settled as a meter can tell. (common practice) */
const SETTLED = 0.01;

function writtenAt(path: string, definition: Definition, workshop: Workshop): Written | undefined {
  return workshop.written(definition).find(({ canonical, role }) => canonical === path && role === 'value');
}

type Scope = ReadonlyMap<string, { readonly written: Written; readonly value: QuantityValue }>;

/** Air and moisture as written side by side: for the shop's climate, for a definition, for each reading. */
function scopesOf(all: readonly Written[]): Iterable<Scope> {
  const scopes = new Map<unknown, Map<string, { written: Written; value: QuantityValue }>>();
  for (const written of all) {
    const name = /^(?:climate\.)?(humidity|moisture|temperature)$/.exec(written.canonical)?.[1];
    const value = written.values[0]?.value;
    if (name === undefined || value?.kind !== 'quantity' || value.quantity.dimension.name !== WANTED.get(name)?.name)
      continue;
    const key = written.occasion ?? 'own';
    const scope = scopes.get(key) ?? new Map<string, { written: Written; value: QuantityValue }>();
    scope.set(name, { written, value });
    scopes.set(key, scope);
  }
  return scopes.values();
}

const WANTED: ReadonlyMap<string, { readonly name: string }> = new Map(
  Object.entries<{ readonly name: string }>({
    humidity: DIMENSION.humidity,
    moisture: DIMENSION.moisture,
    temperature: DIMENSION.temperature,
  }),
);

function balanceOf(celsius: number, humidity: number, moisture: number) {
  try {
    const wood = equilibriumMoisture(celsius, humidity);
    return {
      moisture: wood,
      humidity: attempt(() => humidityForMoisture(celsius, moisture)),
      /** How much moisture an error of the hygrometer is worth. */
      moistureFor: (error: number) => Math.abs(equilibriumMoisture(celsius, Math.min(1, humidity + error)) - wood),
    };
  } catch (error) {
    if (error instanceof MechanicsError) return undefined; // no such air: `implausible` asks about it
    throw error;
  }
}

function attempt(compute: () => number): number | undefined {
  try {
    return compute();
  } catch (error) {
    if (error instanceof MechanicsError) return undefined;
    throw error;
  }
}
