/** Writes a solid mesh as an input deck for CalculiX: C3D20R bricks, nine-constant woods, supports, modes and static loads. */
import { patchCorners, type SolidTop, type SolidWood, type Woods } from './inputs.js';
import { gaussPoints, serendipity } from './shapes.js';
import type { Part, SolidMesh } from './solid-mesh.js';
import { stripOf } from './strips.js';

export interface LoadCase {
  readonly name: 'couple' | 'full';
  /** N, spread evenly over the upper face of the loaded patch, toward +x. */
  readonly shear: number;
  /** N·m, as a pressure on that face that changes evenly along x; tips the patch toward +x. */
  readonly couple: number;
}

/** `couple`: tension × height as a pure couple; `full`: the tension itself, its resultant at its height above the plate, where the edge can take it up. */
export function loadCases(top: SolidTop): readonly LoadCase[] {
  if (!top.load) return [];
  const { patch, tension_N: tension, height_mm: height } = top.load;
  const index = top.patches.findIndex(({ name }) => name === patch);
  const upTo = top.patches
    .slice(0, index + 1)
    .filter(({ side }) => side === 'over')
    .reduce((sum, { thickness_mm }) => sum + thickness_mm, 0);
  const couple: LoadCase = { name: 'couple', shear: 0, couple: (tension * height) / 1000 };
  if (top.edge === 'hinged, free in plane') return [couple];
  return [couple, { name: 'full', shear: tension, couple: (tension * (height - upTo)) / 1000 }];
}

/** Free tops get six rigid modes before the wanted ones. */
export function writeDeck(top: SolidTop, woods: Woods, mesh: SolidMesh, modes: number): string {
  const lines = ['*NODE, NSET=ALL'];
  const { places, bricks } = mesh;
  for (let i = 0; i < places.length; i += 3) {
    lines.push(
      `${i / 3 + 1}, ${places
        .slice(i, i + 3)
        .map((v) => v.toFixed(10))
        .join(', ')}`,
    );
  }
  const sets = new Map<string, { part: Part; rows: string[] }>();
  bricks.forEach(({ nodes, part }, i) => {
    const name = setName(part);
    const set = sets.get(name) ?? { part, rows: [] };
    sets.set(name, set);
    const n = nodes.map((node) => node + 1);
    set.rows.push(`${i + 1}, ${n.slice(0, 10).join(', ')},`, n.slice(10).join(', '));
  });
  for (const [name, { rows }] of sets) lines.push(`*ELEMENT, TYPE=C3D20R, ELSET=${name}`, ...rows);
  for (const [name, wood] of Object.entries(woods)) lines.push(...material(name, wood));
  for (const [name, { part }] of sets) {
    const { wood, angle } = woodOf(top, part);
    lines.push(
      `*ORIENTATION, NAME=O${name}, SYSTEM=RECTANGULAR`,
      [Math.cos(angle), Math.sin(angle), 0, -Math.sin(angle), Math.cos(angle), 0].map((v) => v.toFixed(12)).join(', '),
      `*SOLID SECTION, ELSET=${name}, MATERIAL=${wood.toUpperCase()}, ORIENTATION=O${name}`,
    );
  }
  lines.push(...supports(top, mesh));
  lines.push('*NSET, NSET=PLATE', ...plateNodes(mesh).map((node) => `${node + 1},`));
  const print = ['*NODE PRINT, NSET=PLATE', 'U', '*END STEP'];
  lines.push('*STEP', '*FREQUENCY', `${modes + rigidModes(top)}`, ...print);
  for (const load of loadCases(top)) {
    const forces = patchForces(top, mesh, load).map(
      ([node, axis, force]) => `${node + 1}, ${axis}, ${force.toExponential(10)}`,
    );
    lines.push('*STEP', '*STATIC', ...staticSupports(top, mesh), '*CLOAD, OP=NEW', ...forces, ...print);
  }
  return lines.join('\n') + '\n';
}

/** Nodes of the plate's three levels, ascending. */
export function plateNodes({ bricks }: SolidMesh): number[] {
  return [...new Set(bricks.filter(({ part }) => part.kind === 'plate').flatMap(({ nodes }) => nodes))].sort(
    (a, b) => a - b,
  );
}

function setName(part: Part): string {
  if (part.kind === 'plate') return 'EPLATE';
  if (part.kind === 'brace') return `EBRACE${part.brace}`;
  if (part.kind === 'patch') return `EPATCH${part.patch}`;
  return `ECROSS${part.braces.join('X')}`;
}

function woodOf(top: SolidTop, part: Part): { readonly wood: keyof Woods; readonly angle: number } {
  const direction = (brace: number): number => {
    const { along } = stripOf(top.braces[brace]!, brace);
    return Math.atan2(along[1], along[0]);
  };
  if (part.kind === 'plate') return { wood: top.plate.wood, angle: 0 };
  if (part.kind === 'brace') return { wood: top.braces[part.brace]!.wood, angle: direction(part.brace) };
  if (part.kind === 'patch') {
    const { wood, grain_deg: grain } = top.patches[part.patch]!;
    return { wood, angle: (grain * Math.PI) / 180 };
  }
  // Its two stiff axes lie evenly about the two braces, which seldom cross at a right angle.
  const [a, b] = part.braces;
  return { wood: 'crossing', angle: (direction(a) + direction(b)) / 2 - Math.PI / 4 };
}

function material(name: string, w: SolidWood): string[] {
  const elastic = [w.E_L_Pa, w.E_R_Pa, w.E_T_Pa, w.nu_LR, w.nu_LT, w.nu_RT, w.G_LR_Pa, w.G_LT_Pa];
  return [
    `*MATERIAL, NAME=${name.toUpperCase()}`,
    '*ELASTIC, TYPE=ENGINEERING CONSTANTS',
    elastic.join(', ') + ',',
    `${w.G_RT_Pa}`,
    '*DENSITY',
    `${w.rho_kg_m3}`,
  ];
}

/** Modes without stiffness, which come before the elastic ones. */
export function rigidModes({ edge }: SolidTop): number {
  return edge === 'free' ? 6 : edge === 'hinged, free in plane' ? 3 : 0;
}

/** For the couple only, which needs no reaction in the plane; in modes such single supports would make modes of their own. */
function staticSupports(top: SolidTop, mesh: SolidMesh): string[] {
  if (top.edge !== 'hinged, free in plane') return [];
  const corners = [...new Set(mesh.plan.rim.flatMap(([a, b]) => [a, b]))];
  const along = corners.sort((p, q) => mesh.plan.x[p]! - mesh.plan.x[q]!);
  const [tail, neck] = [along[0]!, along[along.length - 1]!];
  return ['*BOUNDARY', `${mesh.node(tail, 1) + 1}, 1, 2`, `${mesh.node(neck, 1) + 1}, 2, 2`];
}

/** The mid-plane between two corner nodes is held by an equation, since a brick has no node there. */
function supports(top: SolidTop, mesh: SolidMesh): string[] {
  if (top.edge === 'free') return [];
  const { rim } = mesh.plan;
  const corners = [...new Set(rim.flatMap(([a, b]) => [a, b]))];
  const lastAxis = 3;
  const firstAxis = top.edge === 'hinged' ? 1 : 3;
  const boundary = ['*BOUNDARY'];
  for (const corner of corners) boundary.push(`${mesh.node(corner, 1) + 1}, ${firstAxis}, ${lastAxis}`);
  if (top.edge === 'clamped') {
    for (const corner of corners) for (const level of [0, 1, 2]) boundary.push(`${mesh.node(corner, level) + 1}, 1, 2`);
    for (const [, , middle] of rim) for (const level of [0, 2]) boundary.push(`${mesh.node(middle, level) + 1}, 1, 2`);
  }
  const equations = rim.flatMap(([a, b, middle]) => {
    const terms = [
      [mesh.node(middle, 2), 1],
      [mesh.node(middle, 0), 1],
      ...[a, b].flatMap((corner) => [0, 2].map((level) => [mesh.node(corner, level), -0.5])),
    ] as const;
    return Array.from({ length: lastAxis - firstAxis + 1 }, (_, k) => firstAxis + k).flatMap((axis) => {
      const written = terms.map(([node, factor]) => `${node + 1}, ${axis}, ${factor}`);
      return ['*EQUATION', '6', written.slice(0, 4).join(', ') + ',', written.slice(4).join(', ')];
    });
  });
  return [...boundary, ...equations];
}

/** Consistent forces of even traction and evenly changing pressure on the upper face of the loaded patch: node, axis, N. */
export function patchForces(top: SolidTop, mesh: SolidMesh, load: LoadCase): (readonly [number, number, number])[] {
  const patch = top.patches.findIndex(({ name }) => name === top.load!.patch);
  const corners = patchCorners(top.patches[patch]!);
  const [width, length] = [corners[1]![0] - corners[0]![0], corners[2]![1] - corners[1]![1]].map((v) => v / 1000) as [
    number,
    number,
  ];
  const middle = (corners[0]![0] + corners[1]![0]) / 2;
  const up = new Map<number, number>();
  const forward = new Map<number, number>();
  const { plan } = mesh;
  plan.quads.forEach((quad, q) => {
    if (!plan.patchesOf[q]!.includes(patch)) return;
    const nodes = Array.from(quad, (node) => mesh.node(node, mesh.highest[q]!));
    for (const { xi, eta, x, area } of gaussPoints(plan, quad)) {
      const n = serendipity(xi, eta);
      const dA = area * 1e-6;
      const lift = (-12 * load.couple * (x - middle)) / 1000 / (length * width ** 3);
      nodes.forEach((node, k) => {
        up.set(node, (up.get(node) ?? 0) + n[k]! * dA * lift);
        forward.set(node, (forward.get(node) ?? 0) + (n[k]! * dA * load.shear) / (length * width));
      });
    }
  });
  return [
    ...[...up].map(([node, force]) => [node, 3, force] as const),
    ...(load.shear === 0 ? [] : [...forward].map(([node, force]) => [node, 1, force] as const)),
  ];
}
