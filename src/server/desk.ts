import type { Edition } from './edition.ts';
import type { LoadResult } from './loader.ts';

/** What became of a reload. */
export type Reload =
  | { readonly kind: 'done'; readonly before: Edition; readonly after: Edition }
  | { readonly kind: 'refused'; readonly loaded: LoadResult }
  | { readonly kind: 'running' };

/** How new editions come about: loads the files, and makes ready what is sound. */
export interface Press {
  readonly load: () => Promise<LoadResult>;
  readonly make: (loaded: LoadResult & { readonly pack: SharedArrayBuffer }) => Promise<Edition>;
}

/** Holds the edition in use, and sees that one is let go only when nobody works with it any more. */
export class Desk {
  private edition: Edition;
  private readonly press: Press;
  private readonly users = new Map<Edition, number>();
  private reloading = false;

  constructor(edition: Edition, press: Press) {
    this.edition = edition;
    this.press = press;
  }

  get current(): Edition {
    return this.edition;
  }

  /** Works with the edition in use, which stays until the work is done even if another takes its place. */
  async with<T>(work: (edition: Edition) => T | Promise<T>): Promise<T> {
    const { edition } = this;
    this.users.set(edition, (this.users.get(edition) ?? 0) + 1);
    try {
      return await work(edition);
    } finally {
      const left = (this.users.get(edition) ?? 1) - 1;
      this.users.set(edition, left);
      if (left === 0) {
        this.users.delete(edition);
        if (edition !== this.edition) await edition.crew.dismiss();
      }
    }
  }

  /** Loads the files anew. The old edition answers until the new one is whole and sound; a bad one changes nothing. */
  async reload(): Promise<Reload> {
    if (this.reloading) return { kind: 'running' };
    this.reloading = true;
    try {
      const loaded = await this.press.load();
      const { pack } = loaded;
      if (pack === null) return { kind: 'refused', loaded };
      const before = this.edition;
      // the same in other words: comments, order, file names
      if (loaded.hash === before.hash) return { kind: 'done', before, after: before };
      const after = await this.press.make({ ...loaded, pack });
      this.edition = after;
      if (!this.users.has(before)) await before.crew.dismiss();
      return { kind: 'done', before, after };
    } finally {
      this.reloading = false;
    }
  }
}
