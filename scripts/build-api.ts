import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { apiText } from './api-document.ts';

/** Writes api/openapi.yaml from the schemas. */
const { version } = JSON.parse(await readFile('package.json', 'utf8')) as { readonly version: string };
await mkdir('api', { recursive: true });
await writeFile('api/openapi.yaml', apiText(version));
