import { EXIT, type ExitCode, type Io } from './io.ts';
import type { Given } from './read-options.ts';
import { sayFaults } from './say-faults.ts';
import { addToken, tokenFile } from './token-file.ts';

/** `legwork token`: makes a token, keeps its hash, and shows the token once. */
export async function runToken(given: Given, io: Io): Promise<ExitCode> {
  const { makeToken, tokenHash } = await import('../server/token.ts');
  const file = await tokenFile(given, io.env);
  const token = makeToken();
  try {
    await addToken(file, tokenHash(token));
  } catch (error) {
    const reason = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    return sayFaults(io, [{ list: 'usage', code: 'file-not-writable', params: { file, reason, option: '--tokens' } }]);
  }
  io.out(`${token}\n`);
  io.err(
    `Only its hash is kept, in ${file}: this token is not shown again. It lets its holder reload the catalogue.\n`,
  );
  return EXIT.yes;
}
