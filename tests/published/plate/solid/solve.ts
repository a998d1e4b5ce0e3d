/**
 * Reference solutions of our own braced tops with solid elements, kept in `tops.json` beside this file.
 *
 *   node esbuild.config.mjs run tests/published/plate/solid/solve.ts            proof, and all tops
 *   node esbuild.config.mjs run tests/published/plate/solid/solve.ts parlor     only what is so named
 *
 * The program is CalculiX (`ccx`, Debian package `calculix-ccx`; the kept solutions are of version 2.20); it is no part of this
 * project, and where it is not installed this script says so and leaves the file as it is.
 *
 * How they were made
 * - Tops: `tops.ts` (outlines in `outlines.ts`); all of it is repeated in the file, so that the file can be read without the script.
 * - Wood: the nine constants of the older reference set, L, R, T; T is the thickness of the plate, the height of braces and blocks.
 *   Grain of the plate along x, of braces along themselves, of bridge and bridge plate across (y).
 * - Plan: quadrilaterals that follow outline, hole, blocks and the real footprint of every brace (`skeleton.ts`, `planMesh.ts`), at
 *   three spacings. The plan is built up into C3D20R bricks with joined nodes: one layer through the plate, two through each brace and
 *   through blocks over 5 mm, one through thinner ones (`solidMesh.ts`). A hollowed or tapered brace is as high at each node as drawn.
 * - Where braces cross: `half-lap` gives the earlier one the glued half of the height and the later one the free half, each with its
 *   own grain, all faces glued; `solid` is one block of equal stiffness along both, as in the older set.
 * - Edge: held on the line of the mid-plane, between the bricks' corners by an equation (`deck.ts`); the thickness may always change.
 * - Modes: the lowest eight, scaled to unit modal mass. Static: strings on the upper face of the named block, as a pure couple
 *   (pressure that changes evenly along x, tension × height) and whole (tension as an even traction, with the rest of the couple).
 * - Kept: frequencies; shapes in the mid-plane at about a hundred places; air moved; effective modal mass for movement up, from the
 *   program; mean movement of the loaded block; its rotation, least squares over its footprint and along its middle line, at the
 *   plate's upper face; lowest and highest place in front of and behind it. Modes of the coarser meshes are matched by shape.
 * - Limit: Richardson over the three meshes (`agreement.ts`), with the distance to the finest mesh as its uncertainty.
 * - Left in it: two layers and two bricks across a brace at every spacing. Four layers lower the parlor's modes by 0.1 to 0.25 %.
 * - Proof: a free blank, a hinged rectangle and two braced tops that were solved before with other meshes (`proven.ts`).
 *
 * What is not in them: linings, glue lines, strings and air, arching, and any gap in the joints.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { format } from 'prettier';
import { limitOf, mac, matched } from './agreement.js';
import { loadCases, rigidModes, writeDeck, type LoadCase } from './deck.js';
import type { SolidTop } from './inputs.js';
import { gridOf, massAndArea, Measure, type ModeMeasures, type StaticMeasures } from './measure.js';
import { planMesh } from './plan-mesh.js';
import { installedVersion, runProgram } from './program.js';
import { provenCases, woods, type ProvenCase } from './proven.js';
import type { Proof, SolidFile, SolidResult, SolvedMesh } from './results.js';
import { solidMesh } from './solid-mesh.js';
import { solidTops } from './tops.js';

const FILE = resolve('tests/published/plate/solid/tops.json');
const MODES = 8;
/** mm */
const SPACINGS: readonly [number, number, number] = [30, 22, 16];
/** Narrow struts close together need more: on the meshes above the third mode still fell faster with each of them. */
const CLOSER: Readonly<Record<string, readonly [number, number, number]>> = { classical: [16, 12, 9] };

interface Solved {
  readonly mesh: SolvedMesh;
  readonly modes: readonly (ModeMeasures & { readonly frequency: number; readonly effectiveMassUp: number })[];
  readonly statics: readonly (readonly [LoadCase['name'], StaticMeasures])[];
  readonly size: number;
  readonly mass_kg: number;
  readonly area_m2: number;
}

function solveOnce(top: SolidTop, spacing: number, grid: ReturnType<typeof gridOf>): Solved {
  const plan = planMesh(top, spacing);
  const mesh = solidMesh(top, plan);
  const printed = runProgram(writeDeck(top, woods, mesh, MODES));
  const measure = new Measure(top, mesh, grid);
  const up = (block: number) => (node: number) => printed.blocks[block]!.get(node + 1)![2];
  const rigid = rigidModes(top);
  const modes = Array.from({ length: MODES }, (_, i) => ({
    ...measure.mode(up(rigid + i)),
    frequency: printed.frequencies[rigid + i]!,
    effectiveMassUp: printed.effectiveMassUp[rigid + i]!,
  }));
  const statics = loadCases(top).map(({ name }, i) => [name, measure.statics(up(rigid + MODES + i))] as const);
  const body = massAndArea(top, woods, plan);
  const counts = { plateBricks: plan.quads.length, bricks: mesh.bricks.length, nodes: mesh.places.length / 3 };
  console.log(`  ${top.name}, ${spacing} mm: ${counts.nodes} nodes, ${printed.seconds.toFixed(0)} s`);
  return {
    mesh: { spacing_mm: spacing, ...counts, seconds: round(printed.seconds, 3), frequencies_Hz: [], likeness: [] },
    modes,
    statics,
    size: Math.sqrt(body.area_m2 / plan.quads.length),
    ...body,
  };
}

function solveTop(top: SolidTop): SolidResult {
  const grid = gridOf(top, 100);
  const solved = (CLOSER[top.name] ?? SPACINGS).map((spacing) => solveOnce(top, spacing, grid)) as [
    Solved,
    Solved,
    Solved,
  ];
  const finest = solved[2];
  const shapes = finest.modes.map(({ shape }) => shape);
  const ordered = solved.map(({ modes }) => {
    const order = matched(
      shapes,
      modes.map(({ shape }) => shape),
    );
    return order.map((i) => modes[i]!);
  });
  const overMeshes = (value: (solved: Solved, k: number) => number): [number, number, number] =>
    solved.map(value) as [number, number, number];
  const sizes = overMeshes(({ size }) => size);
  const limit = (value: (solved: Solved, k: number) => number): { value: number; uncertainty_pct: number } => {
    const found = limitOf(sizes, overMeshes(value));
    return { value: round(found.value, 6), uncertainty_pct: round(found.uncertainty_pct, 2) };
  };
  const meshes = solved.map(({ mesh, statics }, k): SolvedMesh => ({
    ...mesh,
    frequencies_Hz: ordered[k]!.map(({ frequency }) => round(frequency, 6)),
    likeness: ordered[k]!.map(({ shape }, i) => round(mac(shape, shapes[i]!), 5)),
    rotation_deg: Object.fromEntries(statics.map(([name, { rotation_deg: value }]) => [name, round(value, 5)])),
  }));
  const modes = finest.modes.map((mode, i) => {
    const { value, uncertainty_pct } = limit((_, k) => ordered[k]![i]!.frequency);
    return {
      frequency_Hz: value,
      uncertainty_pct,
      volumeDisplacement_m2: round(mode.volumeDisplacement, 5),
      effectiveMassUp_kg: round(mode.effectiveMassUp, 5),
      bridge: round(mode.bridge, 5),
      shape: mode.shape.map((w) => round(w, 4)),
    };
  });
  const statics = finest.statics.map(([name, found], i) => {
    const rotation = limit((one) => one.statics[i]![1].rotation_deg);
    const middleLine = limit((one) => one.statics[i]![1].rotationMiddleLine_deg);
    const { shear, couple } = loadCases(top)[i]!;
    return [
      name,
      {
        shear_N: shear,
        coupleOnBlock_Nm: round(couple, 6),
        rotation_deg: rotation.value,
        rotationMiddleLine_deg: middleLine.value,
        uncertainty_pct: Math.max(rotation.uncertainty_pct, middleLine.uncertainty_pct),
        dip_mm: limit((one) => one.statics[i]![1].dip_mm).value,
        belly_mm: limit((one) => one.statics[i]![1].belly_mm).value,
        shape_mm: found.shape_mm.map((w) => round(w, 4)),
      },
    ] as const;
  });
  return {
    ...top,
    mass_kg: round(finest.mass_kg, 6),
    area_m2: round(finest.area_m2, 6),
    grid_mm: grid,
    meshes,
    reference: { modes, statics: Object.fromEntries(statics) },
  };
}

/** Throws when the deck writer does not give what is known. */
function prove({ top, spacing, frequencies, rotation, within }: ProvenCase): Proof {
  const { mesh, modes, statics } = solveOnce(top, spacing, gridOf(top, 40));
  const off = (value: number, known: number, what: string): number => {
    const share = value / known - 1;
    if (!(Math.abs(share) <= within)) throw new Error(`${top.name}: ${what} is ${value}, known ${known}.`);
    return round(100 * share, 2);
  };
  return {
    name: top.name,
    about: top.about,
    nodes: mesh.nodes,
    known_Hz: frequencies,
    frequencies_Hz: frequencies.map((_, i) => round(modes[i]!.frequency, 6)),
    off_pct: frequencies.map((known, i) => off(modes[i]!.frequency, known, `mode ${i + 1}`)),
    ...(rotation && {
      rotation_deg: Object.fromEntries(statics.map(([name, found]) => [name, round(found.rotation_deg, 5)])),
      rotationOff_pct: Object.fromEntries(
        statics.map(([name, found]) => [name, off(found.rotation_deg, rotation[name], 'rotation')]),
      ),
    }),
  };
}

function round(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}

async function main(wanted: readonly string[]): Promise<void> {
  const version = installedVersion();
  if (version === undefined) {
    console.log('CalculiX (ccx) is not installed; tops.json stays as it is.');
    return;
  }
  const old = existsSync(FILE) ? (JSON.parse(readFileSync(FILE, 'utf8')) as SolidFile) : undefined;
  const chosen = (name: string): boolean => wanted.length === 0 || wanted.includes(name);
  let file: SolidFile = {
    about:
      'Solid-element solutions of braced tops; how they were made is told in solve.ts. Lengths in mm, angles in degrees, otherwise SI.',
    program: `CalculiX ${version}, C3D20R`,
    woods,
    proof: old?.proof ?? [],
    tops: old?.tops ?? [],
  };
  const save = async (): Promise<void> =>
    writeFileSync(FILE, await format(JSON.stringify(file), { parser: 'json', printWidth: 120 }));
  if (chosen('proof')) {
    file = { ...file, proof: provenCases.map(prove) };
    await save();
  }
  for (const top of solidTops) {
    const known = file.tops.find(({ name }) => name === top.name);
    if (!chosen(top.name)) continue;
    const result = solveTop(top);
    const tops = known ? file.tops.map((t) => (t === known ? result : t)) : [...file.tops, result];
    file = { ...file, tops };
    await save();
  }
}

await main(process.argv.slice(2));
