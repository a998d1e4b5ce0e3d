import type { Definition } from '../../facts/facts.js';

/** A recipe, its parent and its grandparent, all in force. */
export interface Line {
  readonly child: Definition;
  readonly parent: Definition;
  readonly grandparent: Definition;
}
