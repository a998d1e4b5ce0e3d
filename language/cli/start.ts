/** `npm start`. */
import { demonstrate } from './demo.js';
import { processIo } from './process-io.js';

process.exitCode = await demonstrate(processIo());
