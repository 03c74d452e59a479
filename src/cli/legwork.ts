import { fileURLToPath } from 'node:url';
import { loadProgram, programScript } from './launch.ts';

const file = fileURLToPath(new URL('./program.js', import.meta.url));
void loadProgram(file, programScript(file)).start();
