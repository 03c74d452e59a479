import { type Computed, computed, outside } from './outcome.ts';

/** A hexagon socket and the key for it, mm across flats. */
export interface HexKey {
  readonly thread: string;
  /** Nominal size of the key (ISO 2936) and of the socket (ISO 4762). */
  readonly key: number;
  /** Mean width of the socket. */
  readonly socket: number;
}

/**
 * Keys for cap screws. Source: ISO 4762; the mean socket widths read in FreeCAD's fasteners data, the nominal sizes (and
 * that ISO 2936 has these keys) from memory. Columns: thread, key, mean socket.
 */
const KEYS: readonly HexKey[] = (
  [
    ['M3', 2.5, 2.56],
    ['M4', 3, 3.06],
    ['M5', 4, 4.06],
    ['M6', 5, 5.06],
    ['M8', 6, 6.06],
    ['M10', 8, 8.07],
    ['M12', 10, 10.07],
  ] as const
).map(([thread, key, socket]) => ({ thread, key, socket }));

/** The key for a cap screw by its thread, `M3` to `M12`. Only for screws to ISO 4762: foot bolts and caps often are not. */
export function hexKey(thread: string): Computed<HexKey> {
  const key = KEYS.find((one) => one.thread === thread);
  return key ? computed(key) : outside('not-in-table', { table: 'ISO 4762', found: thread });
}
