/** Index of the mode to draw: there may be fewer than when it was chosen. */
export function shownMode(wanted: number, modes: readonly unknown[]): number {
  return Math.max(0, Math.min(wanted, modes.length - 1));
}
