import { outside } from './main.ts';

const { code, out, err } = await outside(process.argv.slice(2));
process.stdout.write(out);
process.stderr.write(err);
process.exitCode = code;
