/** The variables of a design as a maker would call them, with the values they went from and to. */
import { writeInShopUnit } from '../shop-values.js';
import type { Design, DesignVariable } from '../../recipes/builds/design-matrix.js';
import type { ToldEffect } from '../../recipes/builds/response-effects.js';
import type { Workshop } from '../../recipes/workshop.js';

export class VariableWords {
  constructor(
    private readonly design: Design,
    private readonly workshop: Workshop,
  ) {}

  /** Every path: `bracing.x-bass.height and bracing.x-treble.height`. */
  paths({ paths }: Pick<DesignVariable, 'paths'>): string {
    return this.workshop.wording.and(paths);
  }

  /** `15.9 mm → 14.9 mm`, `sitka-spruce → norway-spruce`. */
  step(variable: DesignVariable): string {
    return `${this.from(variable)} → ${this.to(variable)}`;
  }

  /** What a column of a table has room for: `bridge.mass 22 g`, `top.wood norway-spruce + bracing.wood billet-4`. */
  short(variables: readonly DesignVariable[]): string {
    return variables
      .map((variable) => `${this.workshop.wording.some(variable.paths, 1)} ${this.to(variable)}`)
      .join(' + ');
  }

  /** The same, and time where what a hand learned meanwhile cannot be told from it. */
  group({ variables, withTime }: Pick<ToldEffect, 'variables' | 'withTime'>): string {
    const { text } = this.workshop.wording;
    return [this.short(variables), ...(withTime ? [text('the order in which they were made')] : [])].join(' + ');
  }

  /** `bridge.mass 22 g`: what a build has that the one before had not. */
  changeAt({ paths }: DesignVariable, row: number): string {
    return `${this.workshop.wording.some(paths, 1)} ${this.valueAt(paths[0]!, row)}`;
  }

  to(variable: DesignVariable): string {
    return variable.species?.[1] ?? this.valueIn(variable, variable.to);
  }

  from(variable: DesignVariable): string {
    return variable.species?.[0] ?? this.valueIn(variable, this.design.reference);
  }

  /** The value a path has in a build, the species where that is what was changed. */
  valueAt(path: string, row: number): string {
    const all = this.design.variables.filter(({ paths }) => paths[0] === path);
    const [first] = all;
    if (first!.kind !== 'word') return this.valueIn(first!, row);
    const changed = all.find(({ column }) => column[row] === 1);
    const species = changed ? changed.species?.[1] : all.find((each) => each.species)?.species?.[0];
    return species ?? this.valueIn(first!, row);
  }

  private valueIn({ paths, kind, column }: DesignVariable, row: number): string {
    const { text } = this.workshop.wording;
    if (kind === 'member')
      return column[row] === column[this.design.reference] ? this.own(paths[0]!) : this.other(paths[0]!);
    const held = this.design.builds[row]!.values.get(paths[0]!);
    return held ? writeInShopUnit(paths[0]!, held.value) : text('none');
  }

  private own(member: string): string {
    const { text } = this.workshop.wording;
    return this.isThere(member) ? text('with it') : text('without it');
  }

  private other(member: string): string {
    const { text } = this.workshop.wording;
    return this.isThere(member) ? text('without it') : text('with it');
  }

  private isThere(member: string): boolean {
    return [...this.design.builds[this.design.reference]!.values.keys()].some((path) => path.startsWith(`${member}.`));
  }
}
