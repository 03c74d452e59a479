import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { follows } from './follows.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const readme = readFileSync(`${root}/README.md`, 'utf8');

/** A block of the README that shows a command and what it prints; `[...]` stands for lines left out. */
interface Shown {
  readonly command: string;
  readonly output: readonly string[];
}

const blocks: readonly Shown[] = [...readme.matchAll(/```console\n\$ legwork ([^\n]*)\n([\s\S]*?)```/g)].map(
  (match) => ({
    command: match[1] ?? '',
    output: (match[2] ?? '').trimEnd().split('\n'),
  }),
);

function run(args: readonly string[]): { readonly out: string; readonly code: number } {
  try {
    const out = execFileSync('node', ['dist/legwork.js', ...args], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1', COLUMNS: '80' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    return { out, code: 0 };
  } catch (error) {
    const failed = error as { readonly stdout?: string; readonly stderr?: string; readonly status?: number };
    // what is wrong with a question is said on standard error, and nothing else is said then
    const out = failed.status === 2 ? failed.stderr : failed.stdout;
    return { out: out ?? '', code: failed.status ?? -1 };
  }
}

describe('README', () => {
  it('blocks: there are commands with their output to hold it to', () => {
    expect(blocks.length).toBeGreaterThanOrEqual(4);
    for (const { output } of blocks) expect(output.filter((line) => line.trim() !== '[...]').length).toBeGreaterThan(1);
  });

  for (const { command, output } of blocks) {
    it(`output: legwork ${command} prints what is shown`, () => {
      const { out, code } = run(command.split(/\s+/));
      expect([0, 1, 2]).toContain(code);
      expect(follows(output, out.split('\n')), out).toBe(true);
    });
  }

  it('commands: every legwork command named in a plain block is understood', () => {
    const commands = [...readme.matchAll(/^legwork ([^\n#>]*)/gm)].map((match) => (match[1] ?? '').trim());
    expect(commands.length).toBeGreaterThan(4);
    for (const command of commands) expect([0, 1], command).toContain(run(command.split(/\s+/)).code);
  });

  it('picture: what is shown is what the command before it draws', () => {
    const [, question = '', file = ''] =
      /\$ legwork (plan [^\n]*--rider-mass[^\n]*)\n[\s\S]*?with `--picture (\S+)`/.exec(readme) ?? [];
    const drawn = join(mkdtempSync(join(tmpdir(), 'legwork-readme-')), 'drawn.svg');
    run([...question.split(/\s+/), '--picture', drawn]);
    expect(readFileSync(`${root}/${file}`, 'utf8')).toBe(readFileSync(drawn, 'utf8'));
    expect(readme).toContain(`](${file})`);
  });

  it('pictures: each that is shown is there, and small', () => {
    const shown = [...readme.matchAll(/!\[([^\]]+)\]\(([^)]+)\)/g)];
    expect(shown.length).toBeGreaterThanOrEqual(2);
    for (const [, words = '', file = ''] of shown) {
      expect(words.length, file).toBeGreaterThan(20);
      expect(statSync(`${root}/${file}`).size, file).toBeLessThan(150_000);
    }
  });

  it('the map of folders: names every folder there is, and none that is not', () => {
    const map = readme.slice(readme.indexOf('## What is where'));
    const named = [...map.matchAll(/^\| `([^`]+)`/gm)].map(([, path = '']) => path);
    for (const path of named) expect([path, existsSync(`${root}/${path}`)]).toEqual([path, true]);
    // built, or made by whoever follows the README
    const built = ['node_modules', 'dist', 'coverage', 'my-forks'];
    const folders = readdirSync(root, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.') && !built.includes(entry.name))
      .map(({ name }) => `${name}/`);
    expect(named).toEqual(expect.arrayContaining(folders));
  });

  it('package: the two commands are the scripts that package.json has', () => {
    const scripts = (
      JSON.parse(readFileSync(`${root}/package.json`, 'utf8')) as { readonly scripts: Record<string, string> }
    ).scripts;
    expect(Object.keys(scripts)).toEqual(expect.arrayContaining(['demo', 'test', 'build']));
    expect(readme).toContain('npm ci && npm run demo');
    expect(readme).toContain('npm ci && npm test');
  });
});
