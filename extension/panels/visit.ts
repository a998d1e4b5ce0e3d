/**
 * A click in a panel that follows the cursor takes the cursor elsewhere, to a model say, to read or to edit there. The panel
 * stays with what it showed until the cursor has left that place again for another.
 */
export class Visit {
  private visited: { readonly name: string; arrived: boolean } | undefined;

  /** The cursor is being sent to the instrument of this name. */
  begin(name: string | undefined): void {
    this.visited = name === undefined ? undefined : { name, arrived: false };
  }

  /** Whether a panel that shows `shown` turns to `here`, where the cursor is now. */
  leadsOn(here: string, shown: string | undefined): boolean {
    const { visited } = this;
    if (here === visited?.name) {
      visited.arrived = true;
      return false;
    }
    // News of an edit may come while the cursor is still on its way.
    if (visited?.arrived !== false || here !== shown) this.visited = undefined;
    return here !== shown;
  }
}
