/** Every kind of string that mechanics knows. */
import type { StringKind } from '../../language/mechanics/strings/string-weight.js';

/** A table must name every kind once, so that the compiler sees one that is missing. */
const BY_KIND: Readonly<Record<StringKind, true>> = {
  'plain steel': true,
  'phosphor bronze': true,
  '80/20 bronze': true,
  'nickel-plated steel': true,
  'stainless steel': true,
  'stainless flat wound': true,
  nylon: true,
  fluorocarbon: true,
  'silver-plated on nylon': true,
};

export const STRING_KINDS = Object.keys(BY_KIND) as readonly StringKind[];
