import { start } from './main.ts';

await start();
