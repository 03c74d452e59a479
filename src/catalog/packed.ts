/**
 * Plain data (null, booleans, numbers, texts, lists, maps and records) with what is said again and again held once: what a linked catalogue is kept as in the cache. Values that
 * are equal may come back as one, so that nobody may change them; nobody may change a catalogue anyway.
 */
export interface Packed {
  /** How many values there are. */
  readonly count: number;
  readonly texts: readonly string[];
  readonly numbers: Float64Array;
  /** The keys of records, each list of keys once. */
  readonly shapes: readonly (readonly string[])[];
  /** One value after the other, each a sign and what it is made of: the numbers of values before it. The last is the whole. */
  readonly code: Uint32Array;
}

const [NULL, UNDEFINED, TRUE, FALSE, TEXT, NUMBER, LIST, MAP, RECORD] = [0, 1, 2, 3, 4, 5, 6, 7, 8] as const;

/** Most words of a list, map or record that is looked for among those before it: longer ones have something of their own. */
const MOST_SHARED = 8;

/** Packs plain data; anything else in it is an error of the program. */
export function packed(whole: unknown): Packed {
  const packer = new Packer();
  packer.put(whole);
  const { count, texts, numbers, shapes, code } = packer;
  return { count, texts, numbers: Float64Array.from(numbers), shapes, code: Uint32Array.from(code) };
}

class Packer {
  count = 0;
  readonly texts: string[] = [];
  readonly numbers: number[] = [];
  readonly shapes: (readonly string[])[] = [];
  readonly code: number[] = [];
  private readonly known = { text: new Map<string, number>(), number: new Map<number, number>() };
  private readonly composites = new Map<string, number>();
  private readonly shapeOf = new Map<string, number>();

  /** The number of a value. */
  put(value: unknown): number {
    switch (typeof value) {
      case 'string':
        return this.once(this.known.text, value, this.texts, TEXT);
      case 'number':
        // in a map minus nothing is nothing
        return Object.is(value, -0)
          ? this.fresh(this.numbers, value, NUMBER)
          : this.once(this.known.number, value, this.numbers, NUMBER);
      case 'boolean':
        return this.composite([value ? TRUE : FALSE]);
      case 'undefined':
        return this.composite([UNDEFINED]);
      case 'object':
        return this.composite(value === null ? [NULL] : this.wordsOf(value));
      default:
        throw new TypeError(`no plain data: ${String(value)}`);
    }
  }

  private wordsOf(value: object): number[] {
    if (Array.isArray(value)) {
      const words: number[] = [LIST, value.length];
      for (const item of value) words.push(this.put(item));
      return words;
    }
    if (value instanceof Map) {
      const words: number[] = [MAP, value.size];
      for (const [key, item] of value) words.push(this.put(key), this.put(item));
      return words;
    }
    if (Object.getPrototypeOf(value) !== Object.prototype) throw new TypeError(`no plain data: ${String(value)}`);
    const words = [RECORD + this.shape(Object.keys(value))];
    for (const item of Object.values(value)) words.push(this.put(item));
    return words;
  }

  private shape(keys: readonly string[]): number {
    const name = keys.join('\n');
    const shape = this.shapeOf.get(name) ?? this.shapes.push(keys) - 1;
    this.shapeOf.set(name, shape);
    return shape;
  }

  private composite(words: readonly number[]): number {
    if (words.length > MOST_SHARED) return this.add(words);
    const key = words.join(' ');
    const at = this.composites.get(key) ?? this.add(words);
    this.composites.set(key, at);
    return at;
  }

  private once<T>(known: Map<T, number>, value: T, among: T[], sign: number): number {
    const at = known.get(value) ?? this.fresh(among, value, sign);
    known.set(value, at);
    return at;
  }

  private fresh<T>(among: T[], value: T, sign: number): number {
    among.push(value);
    return this.add([sign]);
  }

  private add(words: readonly number[]): number {
    for (const word of words) this.code.push(word);
    return this.count++;
  }
}

/** The data that was packed. */
export function unpacked({ count, texts, numbers, shapes, code }: Packed): unknown {
  const values: unknown[] = new Array(count);
  // a copy of a blank record has room for all of its keys at once
  const blanks = shapes.map(
    (keys) => JSON.parse(JSON.stringify(Object.fromEntries(keys.map((key) => [key, null])))) as Record<string, unknown>,
  );
  let [at, text, number] = [0, 0, 0];
  for (let to = 0; to < count; to++) {
    const sign = code[at++] as number;
    if (sign >= RECORD) {
      const keys = shapes[sign - RECORD] as readonly string[];
      const record = { ...blanks[sign - RECORD] };
      for (let key = 0; key < keys.length; key++) record[keys[key] as string] = values[code[at++] as number];
      values[to] = record;
    } else if (sign === TEXT) values[to] = texts[text++];
    else if (sign === NUMBER) values[to] = numbers[number++];
    else if (sign === LIST) {
      const list: unknown[] = new Array(code[at++] as number);
      for (let place = 0; place < list.length; place++) list[place] = values[code[at++] as number];
      values[to] = list;
    } else if (sign === MAP) {
      const map = new Map<unknown, unknown>();
      for (let left = code[at++] as number; left > 0; left--) {
        map.set(values[code[at] as number], values[code[at + 1] as number]);
        at += 2;
      }
      values[to] = map;
    } else values[to] = sign === NULL ? null : sign === UNDEFINED ? undefined : sign === TRUE;
  }
  return values[count - 1];
}
