import { outsideAll, outsideFolder } from './all.ts';

process.exitCode = await outsideAll(outsideFolder(process.argv.slice(2), process.env), (text) =>
  process.stdout.write(`${text}\n`),
);
