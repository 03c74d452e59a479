import { type Catalog, type Problem, readCatalog, type TextFile } from '../../src/catalog/index.ts';

/** A catalogue without a fault, as small as one of everything can be. */
export const SOUND = `catalog: { name: Small, currency: EUR }
makers:
  - { id: orlen, name: Orlen }
documents:
  - { id: manual, title: Manual, maker: orlen, issue: "1" }
specifications:
  - { id: oil, name: oil, use: bath, unit: mL }
  - { id: glove, name: glove, use: consumable, unit: piece }
families:
  - id: wend
    maker: orlen
    name: Wend
    legs: { left: spring, right: damper }
    travel-set-by: cartridge
    travel-end: extended
    slots:
      upper: {}
      lowers: {}
      spring: {}
      volume-spacers: { most: 2 }
      wipers: { pieces: 2, wears: true }
    dimensions: { stanchion: 33 mm }
    keeps: []
    source: { document: manual, page: 1 }
chassis:
  - id: wend-622
    family: wend
    name: Wend 622
    wheel: 622
    axle: { standard: 15x110 }
    travel: { least: 100 mm, greatest: 140 mm }
    axle-to-crown: { compressed: 400 mm, measured: along-steerer }
    doses: { bath: { specification: oil, left: 5 mL, right: 8 mL } }
    upper: W-U
    lowers: W-L
    fitted: { wipers: W-W }
    builds:
      - { travel: 120 mm, slots: { spring: W-S } }
parts:
  - { sku: W-U, maker: orlen, name: Upper, role: upper, fits: [{ family: wend }] }
  - { sku: W-L, maker: orlen, name: Lowers, role: lowers, fits: [{ family: wend }] }
  - sku: W-S
    maker: orlen
    name: Spring
    role: spring
    fits:
      - { family: wend, travel: 120 mm, volume-spacers: { standard: 1, greatest: 2 } }
    price: "40.00"
    numbers: { gtin: "6291041500213" }
  - { sku: W-V, maker: orlen, name: Spacer, role: volume-spacers, fits: [{ family: wend }], needs: [{ sku: W-C }] }
  - { sku: W-C, maker: orlen, name: Clip, role: clip }
  - { sku: W-W, maker: orlen, name: Wiper, role: wipers, fits: [{ family: wend }] }
kits:
  - sku: W-K
    maker: orlen
    name: Kit
    contents:
      - { sku: W-W, quantity: 2 }
      - { sku: W-OIL, amount: 10 mL }
supplies:
  - sku: W-OIL
    maker: orlen
    name: Oil
    use: bath
    unit: mL
    meets: [oil]
    packs:
      - { sku: W-OIL-100, size: 100 mL, price: "8.00" }
tools:
  - { id: hex-5, name: hex key }
operations:
  - id: open
    families: [wend]
    order: 10
    title: Open
    minutes: 5 min
    closed-by: close
    changes: [spring, volume-spacers]
    fasteners:
      - { name: bolt, torque: 6 N·m, tool: hex-5 }
  - id: close
    families: [wend]
    order: 20
    title: Close
    minutes: 5 min
    uses:
      - { dose: bath, side: left }
      - { specification: oil, amount: 2 mL }
  - { id: wipe, families: [wend], order: 15, title: Wipe, minutes: 5 min, requires: [open], changes: [wipers] }
services:
  - { id: care, families: [wend], name: Care, operations: [open, wipe, close] }
`;

/** Where a fault is expected: before this mark, which is taken out of the text. */
export const HERE = '⟦';

/** A change to the sound catalogue: this text, which must be there, becomes that one, with a mark where the fault stands. */
export type Change = readonly [from: string, to: string];

/** The sound catalogue with one text changed. */
export function changed([from, to]: Change): string {
  const parts = SOUND.split(from);
  if (parts.length !== 2) throw new Error(`${parts.length - 1} times in the sound catalogue: ${from}`);
  return parts.join(to);
}

/** Line and column, from 1, of the mark; the text without it. */
export function marked(text: string): {
  readonly text: string;
  readonly at: { readonly line: number; readonly column: number };
} {
  const before = text.split(HERE, 1)[0] ?? '';
  const lines = before.split('\n');
  return { text: text.replace(HERE, ''), at: { line: lines.length, column: (lines.at(-1) ?? '').length + 1 } };
}

export const oneFile = (text: string, name = 'one.yaml'): readonly TextFile[] => [{ name, text }];

/** Reads files that must have no fault. */
export function sound(files: readonly TextFile[]): Catalog {
  const { value, problems } = readCatalog(files, 'folder');
  if (!value || problems.length > 0) throw new Error(JSON.stringify(problems));
  return value;
}

/** `code line:column` of each problem, in the order in which they are reported. */
export const shown = (problems: readonly Problem[]): string[] =>
  problems.map(({ code, place }) => `${code} ${place === null ? 'nowhere' : `${place.line}:${place.column}`}`);
