import { describe, expect, it } from 'vitest';
import { readCatalog } from '../../src/catalog/index.ts';
import { parseSource } from '../../src/catalog/source-file.ts';
import { changed, HERE, marked, oneFile, SOUND, shown, sound } from './sound.ts';

const problemsIn = (text: string, name?: string): string[] =>
  shown(readCatalog(oneFile(text, name), 'folder').problems);
const whole = sound(oneFile(SOUND));
/** The sound catalogue as the values in its file. */
const value = parseSource('one.yaml', SOUND).file.values[0] as Readonly<Record<string, unknown>>;

describe('files: what may be written', () => {
  it('JSON: the same catalogue has the same hash', () => {
    expect(sound(oneFile(JSON.stringify(value), 'one.json')).hash).toBe(whole.hash);
    expect(sound(oneFile(JSON.stringify(value, null, 2), 'one.json')).hash).toBe(whole.hash);
  });

  it('NDJSON: one object a line, blank lines between', () => {
    const lines = Object.entries(value).map(([key, content]) => JSON.stringify({ [key]: content }));
    for (const text of [lines.join('\n'), `${lines.join('\n\n')}\n`])
      expect(sound(oneFile(text, 'one.ndjson')).hash).toBe(whole.hash);
  });

  it('NDJSON: a fault is at its line and column in the whole file', () => {
    const lines = Object.entries(value).map(([key, content]) => JSON.stringify({ [key]: content }));
    const { text, at } = marked(
      lines.join('\n').replace('"maker":"orlen","name":"Clip"', `"maker":${HERE}"orlan","name":"Clip"`),
    );
    expect(problemsIn(text, 'one.ndjson')).toEqual([`unknown-reference ${at.line}:${at.column}`]);
    expect(at.line).toBeGreaterThan(5);
  });

  it('NDJSON: white space and escapes change nothing', () => {
    const lines = Object.entries(value).map(([key, content]) => JSON.stringify({ [key]: content }, null, 1));
    const spaced = lines.map((line) => line.replaceAll(/\n */g, ' '));
    const escaped = spaced.map((line) => line.replaceAll('Clip', '\\u0043lip'));
    expect(escaped).not.toEqual(spaced);
    for (const text of [spaced.join('\n'), escaped.join('\n')])
      expect(sound(oneFile(text, 'one.ndjson')).hash).toBe(whole.hash);
  });

  it('NDJSON: a key that stands twice in a record is a fault at its place', () => {
    const lines = Object.entries(value).map(([key, content]) => JSON.stringify({ [key]: content }));
    for (const space of ['', ' ']) {
      const { text, at } = marked(
        lines
          .join('\n')
          .replace('"maker":"orlen","name":"Clip"', `"maker":"orlen","name":"Clip",${space}${HERE}"name":"Clip"`),
      );
      expect(problemsIn(text, 'one.ndjson')).toEqual([`not-yaml ${at.line}:${at.column}`]);
    }
  });

  it('NDJSON: every record is cited by the line that it stands in', () => {
    const lines = Object.entries(value).flatMap(([key, content]) =>
      Array.isArray(content)
        ? content.map((one) => JSON.stringify({ [key]: [one] }))
        : [JSON.stringify({ [key]: content })],
    );
    const { places, parts } = sound(oneFile(lines.join('\n'), 'one.ndjson'));
    for (const sku of parts.keys()) {
      const line = lines.findIndex((one) => one.startsWith(`{"parts":[{"sku":"${sku}"`)) + 1;
      expect(places.get(`parts/${sku}`)).toBe(`one.ndjson:${line}`);
    }
    expect(parts.size).toBeGreaterThan(5);
  });

  it('YAML: several documents in a file are read one after another', () => {
    const [head = '', ...rest] = SOUND.split('\nmakers:');
    expect(sound(oneFile(`${head}\n---\nmakers:${rest.join('\nmakers:')}`)).hash).toBe(whole.hash);
  });

  it('YAML: anchors and aliases stand for what they name', () => {
    const text = changed(['role: wipers, fits: [{ family: wend }]', 'role: wipers, fits: *fit']).replace(
      'role: upper, fits: [{ family: wend }]',
      'role: upper, fits: &fit [{ family: wend }]',
    );
    expect(sound(oneFile(text)).hash).toBe(whole.hash);
  });

  it('YAML: a byte order mark, CRLF and no line end at the end change nothing', () => {
    for (const text of [`\uFEFF${SOUND}`, SOUND.replaceAll('\n', '\r\n'), SOUND.trimEnd()])
      expect(sound(oneFile(text)).hash).toBe(whole.hash);
  });

  it('CRLF: a fault is at the line and column at which an editor shows it, its excerpt without the line end', () => {
    const { text, at } = marked(changed(['order: 15', `order: ${HERE}fifteen`]));
    const [problem] = readCatalog(oneFile(text.replaceAll('\n', '\r\n')), 'folder').problems;
    expect(problem?.place).toMatchObject(at);
    expect(problem?.place?.excerpt).toBe(text.split('\n')[at.line - 1]);
  });

  it('YAML 1.2: words that once were truth values are words', () => {
    const text = changed(['name: Wend\n', 'name: no\n']);
    expect(sound(oneFile(text)).families.get('wend')?.name).toBe('no');
  });
});

describe('files: what may not', () => {
  it('duplicate keys: named at the second, and nothing of the file is used', () => {
    const { text, at } = marked(changed(['name: Wend 622', `name: Wend 622\n    ${HERE}name: Again`]));
    expect(problemsIn(text)).toEqual([`not-yaml ${at.line}:${at.column}`]);
  });

  it('one mistake: is one problem, though the parser stumbles on', () => {
    const { problems } = readCatalog(oneFile(changed(['  - id: wend-622', ' - id: wend-622'])), 'folder');
    expect(problems.map(({ code }) => code)).toEqual(['not-yaml']);
  });

  it('a name that a chassis passes on to all its builds: is said once, where it stands', () => {
    const text = changed(['fitted: { wipers: W-W }', 'fitted: { wipers: W-X }']).replace(
      '- { travel: 120 mm, slots: { spring: W-S } }',
      '- { travel: 120 mm, usual: true, slots: { spring: W-S } }\n      - { travel: 120 mm, slots: { spring: W-S, volume-spacers: W-V } }',
    );
    const { problems } = readCatalog(oneFile(text), 'folder');
    expect(problems.map(({ code, params }) => [code, params.id])).toEqual([['unknown-reference', 'W-X']]);
  });

  it('a limit that cannot be read: is not said to lie below the other too', () => {
    const { problems } = readCatalog(oneFile(changed(['greatest: 140 mm', 'greatest: 140 psi'])), 'folder');
    expect(problems.map(({ code }) => code)).toEqual(['bad-quantity']);
  });

  it.each([
    ['a list', '- sku: W-X\n'],
    ['the one value parts', 'parts\n'],
  ])('no keys at the top: %s is no catalogue file', (found, text) => {
    const { problems } = readCatalog([...oneFile(SOUND), { name: 'more.yaml', text }], 'folder');
    expect(problems.map(({ code, params, place }) => [code, params.found, place?.file])).toEqual([
      ['not-a-catalog-file', found, 'more.yaml'],
    ]);
  });

  it('a price of nothing: is a warning at its place, and stands', () => {
    const { text, at } = marked(changed(['"40.00"', `${HERE}"0.00"`]));
    const { value, problems } = readCatalog(oneFile(text), 'folder');
    expect([
      value?.parts.get('W-S')?.price,
      problems.map(({ severity, code, place }) => [severity, code, place?.line]),
    ]).toEqual([0, [['warning', 'price-zero', at.line]]]);
  });

  it('JSON: a fault of its form says JSON', () => {
    const { problems } = readCatalog([...oneFile(SOUND), { name: 'more.json', text: '{ "parts": [' }], 'folder');
    expect(problems.map(({ code, params }) => [code, params.language])).toEqual([['not-yaml', 'JSON']]);
  });

  it('tabs: as indentation they are no YAML', () => {
    const [first] = readCatalog(
      oneFile(changed(['    family: wend\n    name: Wend 622', '\tfamily: wend\n    name: Wend 622'])),
      'folder',
    ).problems;
    expect([first?.code, first?.place?.excerpt]).toEqual(['not-yaml', '\tfamily: wend']);
  });

  it('aliases: a bomb of them is refused in no time and without filling the memory', () => {
    const bomb = ['a: &a0 [x, x, x, x, x, x, x, x, x, x]'];
    for (let depth = 1; depth < 12; depth++)
      bomb.push(`b${depth}: &a${depth} [${Array.from({ length: 10 }, () => `*a${depth - 1}`).join(', ')}]`);
    const before = process.memoryUsage().heapUsed;
    expect(problemsIn(`${bomb.join('\n')}\n`)).toEqual(['not-yaml 1:1']);
    expect(process.memoryUsage().heapUsed - before).toBeLessThan(200e6);
  });

  it.each([
    ['lists in YAML', `parts: ${'['.repeat(5000)}${']'.repeat(5000)}`, 'one.yaml'],
    ['objects in JSON', `{"parts": ${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}}`, 'one.json'],
    ['brackets that are never closed', '['.repeat(20_000), 'one.yaml'],
  ])('nesting: %s, thousands deep, are a fault and no crash', (_name, text, name) => {
    const { value: none, problems } = readCatalog(oneFile(text, name), 'folder');
    expect([none, problems.length > 0]).toEqual([null, true]);
  });

  it.each([
    ['nothing', ''],
    ['a comment', '# nothing yet\n'],
    ['a list', '- 1\n- 2\n'],
    ['a text', 'hello\n'],
    ['a number', '7\n'],
    ['null', 'null\n'],
  ])('top: a file that holds %s does not stop the others from being read', (_name, text) => {
    const { problems } = readCatalog([...oneFile(SOUND), { name: 'two.yaml', text }], 'folder');
    for (const problem of problems) expect([problem.place?.file, problem.place?.line]).toEqual(['two.yaml', 1]);
  });

  it('nothing: no file at all is an empty catalogue, nowhere', () => {
    expect(shown(readCatalog([], 'folder').problems)).toEqual(['empty-catalog nowhere']);
  });

  it('heads: a second one is named with the first', () => {
    const two = [...oneFile(SOUND), { name: 'two.yaml', text: '\ncatalog: { name: Other, currency: EUR }\n' }];
    const { problems } = readCatalog(two, 'folder');
    expect(shown(problems)).toEqual(['head-twice 2:10']);
    expect(problems[0]).toMatchObject({ params: { other: 'one.yaml:1' }, place: { file: 'two.yaml' } });
  });

  it('two chassis: of one upper and lowers are named with each other', () => {
    const chassis = /\n {2}- id: wend-622[\s\S]*?(?=\nparts:)/.exec(SOUND)?.[0] ?? '';
    const { problems } = readCatalog(
      oneFile(SOUND.replace(chassis, `${chassis}${chassis.replace('wend-622', 'wend-other')}`)),
      'folder',
    );
    expect(problems.map(({ code, params }) => [code, params.other])).toContainEqual(['two-chassis', 'wend-622']);
  });

  it('many: every fault of every file is said in one run, each at its place', () => {
    const one = changed(['order: 15', `order: fifteen`]).replace('travel-end: extended', 'travel-end: middle');
    const two = 'tools:\n  - { id: hex-6 }\n  - { id: Hex, name: x }\n';
    const three = 'parts:\n  - [\n';
    const { problems } = readCatalog(
      [...oneFile(one), { name: 'two.yaml', text: two }, { name: 'three.yaml', text: three }],
      'folder',
    );
    expect(problems.map(({ code, place }) => `${place?.file}:${place?.line} ${code}`).sort()).toEqual([
      'one.yaml:15 not-one-of',
      'one.yaml:89 wrong-type',
      'three.yaml:3 not-yaml',
      'two.yaml:2 missing-key',
      'two.yaml:3 bad-value',
    ]);
  });

  it('many: faults of meaning are said together too', () => {
    const text = SOUND.replace('currency: EUR', 'currency: EUX')
      .replace('least: 100 mm', 'least: 100 mL')
      .replace('"6291041500213"', '"6291041500214"')
      .replace('changes: [wipers]', 'changes: [wiper]')
      .replace('tool: hex-5', 'tool: hex-4');
    expect(
      readCatalog(oneFile(text), 'folder')
        .problems.map(({ code }) => code)
        .sort(),
    ).toEqual(['bad-currency', 'bad-gtin', 'bad-quantity', 'unknown-reference', 'unknown-slot']);
  });
});

describe('hash', () => {
  const hashOf = (...texts: readonly string[]): string =>
    sound(texts.map((text, at) => ({ name: `${String.fromCharCode(122 - at)}.yaml`, text }))).hash;

  it('hash: comments, white space, quotes, order of keys and names of files do not count', () => {
    expect(hashOf(`# a remark\n${SOUND.replaceAll('\n', '   \n')}`)).toBe(whole.hash);
    expect(hashOf(SOUND.replace('{ id: orlen, name: Orlen }', "{ name: 'Orlen', id: orlen }"))).toBe(whole.hash);
    expect(hashOf(SOUND)).toBe(whole.hash);
  });

  it('hash: the order of records and the files in which they stand do not count', () => {
    const [before = '', after = ''] = SOUND.split('tools:\n');
    const [tools = '', operations = ''] = after.split('operations:\n');
    const apart = [`operations:\n${operations}`, before, `tools:\n${tools}`];
    expect(hashOf(...apart)).toBe(whole.hash);
    const [clip = ''] = / {2}- \{ sku: W-C.*\n/.exec(SOUND) ?? [];
    expect(hashOf(SOUND.replace(clip, '').replace('parts:\n', `parts:\n${clip}`))).toBe(whole.hash);
  });

  it('hash: any fact that differs counts', () => {
    for (const [from, to] of [
      ['name: Wend 622', 'name: Wend 623'],
      ['price: "40.00"', 'price: "40.01"'],
      ['travel: { least: 100 mm', 'travel: { least: 101 mm'],
      ['operations: [open, wipe, close]', 'operations: [open, close]'],
    ] as const)
      expect(hashOf(changed([from, to]))).not.toBe(whole.hash);
  });

  // The order of a family's slots decides between equal plans: model.md, section 7. So it is a fact, and must count.
  it('hash: the order of the slots of a family counts', () => {
    const turned = changed([
      '      spring: {}\n      volume-spacers: { most: 2 }\n',
      '      volume-spacers: { most: 2 }\n      spring: {}\n',
    ]);
    const other = sound(oneFile(turned));
    expect(other.families.get('wend')?.slots.map(({ name }) => name)).not.toEqual(
      whole.families.get('wend')?.slots.map(({ name }) => name),
    );
    expect(other.hash).not.toBe(whole.hash);
  });
});

describe('files: line ends and aliases', () => {
  it('NDJSON: lines may end in CRLF', () => {
    const lines = Object.entries(value).map(([key, content]) => JSON.stringify({ [key]: content }));
    expect(problemsIn(`${lines.join('\r\n')}\r\n`, 'one.ndjson')).toEqual([]);
  });

  it('aliases: one that nobody anchored is a fault at its place', () => {
    const { text, at } = marked(changed(['role: wipers, fits: [{ family: wend }]', `role: wipers, fits: ${HERE}*fit`]));
    expect(problemsIn(text)).toEqual([`not-yaml ${at.line}:${at.column}`]);
  });
});

describe('places: one mistake, one problem', () => {
  it('lowers that there are not: said where they are named, not again at each build', () => {
    const { text, at } = marked(changed(['lowers: W-L\n', `lowers: ${HERE}W-M\n`]));
    expect(problemsIn(text)).toEqual([`unknown-reference ${at.line}:${at.column}`]);
  });

  it('unknown key: the place is that of the key', () => {
    const { text, at } = marked(changed(['wheel: 622', `${HERE}whel: 622\n    wheel: 622`]));
    expect(problemsIn(text)).toEqual([`unknown-key ${at.line}:${at.column}`]);
  });
});
