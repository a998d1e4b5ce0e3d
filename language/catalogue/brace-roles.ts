/** What a brace is for, told from its name, so that the right plausible range is used. */

export interface BraceRole {
  /** The tag ranges are marked with. */
  readonly tag: string;
  readonly root: 'bracing' | 'back-bracing';
  /** Usual names, offered by completion. */
  readonly names: readonly string[];
  /** A name that begins with one of these has this role. */
  readonly begins: readonly string[];
  readonly sentence: string;
}

/** In the order in which a maker lays them out. */
export const BRACE_ROLES: readonly BraceRole[] = [
  {
    tag: 'x',
    root: 'bracing',
    names: ['x-bass', 'x-treble'],
    begins: ['x-', 'main-x', 'leg-'],
    sentence: 'A leg of the X, the pair of crossing braces that carries most of the string load.',
  },
  {
    tag: 'tone-bar',
    root: 'bracing',
    names: ['tone-bar', 'tone-bar-1', 'tone-bar-2'],
    begins: ['tone-bar', 'tone', 'diagonal', 'lower-face'],
    sentence: 'A slanting brace behind the bridge.',
  },
  {
    tag: 'finger',
    root: 'bracing',
    names: ['finger-1', 'finger-2', 'finger-3', 'finger-4'],
    begins: ['finger', 'wing'],
    sentence: 'A small brace between a leg of the X and the edge.',
  },
  {
    tag: 'transverse',
    root: 'bracing',
    names: ['upper-transverse', 'transverse-1', 'transverse-2'],
    begins: ['upper-transverse', 'transverse', 'utb', 'harmonic', 't-bar', 'upper-face'],
    sentence: 'A bar across the top between soundhole and neck, or in front of the bridge.',
  },
  {
    tag: 'popsicle',
    root: 'bracing',
    names: ['popsicle'],
    begins: ['popsicle', 'tongue', 'shoulder'],
    sentence: 'A flat strip under the end of the fingerboard.',
  },
  {
    tag: 'soundhole',
    root: 'bracing',
    names: ['soundhole-bass', 'soundhole-treble'],
    begins: ['soundhole', 'hole', 'donut'],
    sentence: 'A flat strip that strengthens the edge of the soundhole.',
  },
  {
    tag: 'fan',
    root: 'bracing',
    names: ['fan-1', 'fan-2', 'fan-3', 'fan-4', 'fan-5', 'fan-6', 'fan-7'],
    begins: ['fan'],
    sentence: 'A strut of the fan under a classical top.',
  },
  {
    tag: 'closing-bar',
    root: 'bracing',
    names: ['closing-bass', 'closing-treble'],
    begins: ['closing', 'cut-off'],
    sentence: 'A bar that closes the fan towards the tail.',
  },
  {
    tag: 'ladder',
    root: 'bracing',
    names: ['ladder-1', 'ladder-2', 'ladder-3'],
    begins: ['ladder'],
    sentence: 'A bar straight across the top.',
  },
  {
    tag: 'lattice',
    root: 'bracing',
    names: ['lattice-1', 'lattice-2'],
    begins: ['lattice'],
    sentence: 'One bar of a lattice.',
  },
  {
    tag: 'back-upper',
    root: 'back-bracing',
    names: ['back-1', 'back-2'],
    begins: ['back-1', 'back-2', 'upper', 'first', 'second'],
    sentence: 'A back brace of the upper bout or waist.',
  },
  {
    tag: 'back-lower',
    root: 'back-bracing',
    names: ['back-3', 'back-4'],
    begins: ['back-3', 'back-4', 'lower', 'third', 'fourth'],
    sentence: 'A back brace of the lower bout.',
  },
];

/** The usual names of the braces under `root`, in order. */
export function membersOf(root: BraceRole['root']): readonly string[] {
  return BRACE_ROLES.filter((role) => role.root === root).flatMap((role) => role.names);
}

/** The role of the brace a path passes through (`bracing.x-bass.height`), or undefined. */
export function braceRole(path: string): BraceRole | undefined {
  const [root, member] = path.split('.');
  if (member === undefined) return undefined;
  return BRACE_ROLES.find((role) => role.root === root && role.begins.some((word) => member.startsWith(word)));
}
