/**
 * How much the server's process takes for what it has thrown away. V8 lets its heap grow to some three times of what is in
 * use before it looks for what can go, and gives pages back only when it is idle; a server that is typed at all day is seldom
 * idle. What is kept is the same either way.
 */
import { setFlagsFromString } from 'node:v8';

/** Per cent of what is in use, that may be waste before it is looked for. */
const GROWTH = 40;

/** To be called once, first. An engine that does not know the flag says so in its log and goes on as ever. */
export function beThrifty(): void {
  setFlagsFromString(`--heap-growing-percent=${GROWTH}`);
}
