export { DEFAULTS, type Settings } from './settings.ts';
export { start } from './start.ts';
