/**
 * Flags of the server's process. Most of what a keystroke makes is gone by the next: the young part of the heap is kept small
 * (MB; the engine's own choice is 16), since as much of it as there may be is soon in use.
 */
export const SERVER_FLAGS: readonly string[] = ['--max-semi-space-size=4'];
