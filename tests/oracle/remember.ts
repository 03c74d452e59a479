import type { Book } from './book.ts';

/** What was worked out for a key in a catalogue; worked out now where nobody asked before, or too long ago. */
export type Remembering<T> = (book: Book, key: string, workOut: () => T) => T;

/** Remembers so many answers a catalogue; the one that was asked for longest ago is forgotten first. */
export function remembering<T extends object>(most: number): Remembering<T> {
  const shelves = new WeakMap<Book, Map<string, T>>();
  return (book, key, workOut) => {
    const shelf = shelves.get(book) ?? new Map<string, T>();
    shelves.set(book, shelf);
    const value = shelf.get(key) ?? workOut();
    shelf.delete(key);
    shelf.set(key, value);
    for (const oldest of shelf.keys()) {
      if (shelf.size <= most) break;
      shelf.delete(oldest);
    }
    return value;
  };
}
