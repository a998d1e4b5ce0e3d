/**
 * Whether the tests take their time: so in CI and when a file is run by itself. `npm test` has to be done within three
 * minutes, and looks at samples of what takes longest.
 */
export const THOROUGH = process.env['BOOKMATCH_THOROUGH'] !== '0';
