import type { ComponentChildren } from 'preact';
import type { AnswerDocument } from '../../plan/index.ts';
import { words } from '../words/words.ts';

/** What every sheet of paper needs: the answer, one of its ways, and whose catalogue it is. */
export interface Printed {
  readonly answer: AnswerDocument;
  readonly plan: AnswerDocument['plans'][number];
  /** The fork in front of you, and the question in words. */
  readonly fork: string;
  readonly asked: string;
  readonly catalog: string;
}

interface Props {
  readonly printed: Printed;
  readonly title: string;
  readonly children: ComponentChildren;
}

/** A sheet of paper: its title, what was asked, and at its foot what it was worked out from. */
export function Sheet({ printed: { answer, fork, asked, catalog }, title, children }: Props) {
  const { print } = words;
  const hashes = [answer.catalog, answer.stock, answer.shop].map((hash) => hash.slice(0, 8));
  const names = [print.hash.catalog, print.hash.stock, print.hash.shop];
  return (
    <article class="sheet" aria-labelledby="sheet">
      <p class="screen-only">
        <button type="button" onClick={() => globalThis.print()}>
          {print.now}
        </button>
      </p>
      <h1 id="sheet">
        {title}: {fork}
      </h1>
      <p class="asked">{asked}</p>
      {children}
      <p class="basis">
        {words.foot}{' '}
        {print.basis(
          catalog,
          names.map((name, at) => `${name} ${hashes[at] ?? ''}`),
        )}
      </p>
    </article>
  );
}

/** An empty box to tick with a pen. */
export const Box = () => <span class="box" aria-hidden="true" />;

/** A line to write on. */
export const Blank = ({ name }: { readonly name: string }) => (
  <p class="blank">
    <span>{name}</span>
  </p>
);
