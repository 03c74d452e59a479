/**
 * The service: loaded only by `legwork serve`, and built as a bundle of its own (scripts/build.ts), so that nothing of it is loaded with another command.
 */
import { type DestinationStream, pino } from 'pino';

export { DEFAULTS, start } from '../server/index.ts';
/** The log on standard error, written without waiting. */
export const logTo = (): DestinationStream => pino.destination({ dest: 2, sync: false });
