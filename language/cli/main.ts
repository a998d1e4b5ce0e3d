/** `bookmatch` on the command line. */
import { ENGLISH } from '../wording/wording.js';
import { EXIT } from './io.js';
import { processIo } from './process-io.js';
import { bordered, faultMessage, run } from './run.js';

const surroundings = processIo();
// Thrown where no command could catch it: in a callback, in a promise nobody waits for.
process.on('uncaughtException', (error) => {
  bordered(surroundings, ENGLISH).complain(`${faultMessage(error, ENGLISH)}\n`);
  process.exit(EXIT.wrongUse);
});
process.exitCode = await run(process.argv.slice(2), surroundings);
