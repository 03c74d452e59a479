import type { QuestionInput } from '../plan/index.ts';
import type { Trouble } from './service.ts';
import { words } from './words/words.ts';

/** A way to say more clearly what the service could not make out. */
export interface Choice {
  readonly text: string;
  readonly next: QuestionInput;
}

/** Each choice that a problem names, as the question that makes it. `nameOf` knows forks by their id. */
export function choicesOf(
  { code, params }: Trouble['errors'][number],
  question: QuestionInput,
  nameOf: (chassis: string) => string,
): readonly Choice[] {
  switch (code) {
    case 'several-forks-of-bike':
      return textsIn(params.choices).flatMap((said) => forkChoice(question, said, nameOf));
    case 'several-builds-now':
      return textsIn(params.choices).flatMap((said) => buildChoice(question, said));
    case 'travel-now-missing':
    case 'no-build-now':
      return textsIn(params.travels).flatMap((said) => {
        const travelNow = Number(/^([0-9.]+) mm$/.exec(said)?.[1]);
        return Number.isFinite(travelNow)
          ? [{ text: words.part.now(travelNow), next: { ...question, travelNow } }]
          : [];
      });
    case 'unknown-chassis':
      return textsIn(params.nearest).map((chassis) => ({ text: nameOf(chassis), next: { ...question, chassis } }));
    case 'unknown-size':
      return textsIn(params.known).map((size) => ({
        text: words.part.size(size),
        next: params.bike === question.onto ? { ...question, ontoSize: size } : { ...question, size },
      }));
    default:
      return [];
  }
}

const textsIn = (value: unknown): readonly string[] => (Array.isArray(value) ? value.map(String) : []);

/** "--chassis quennet-622 --travel-now 150 (size s, m) (built from 2024-03)" */
function forkChoice(question: QuestionInput, said: string, nameOf: (chassis: string) => string): readonly Choice[] {
  const [, chassis, travel, about = ''] = /^--chassis (\S+) --travel-now ([0-9.]+)(.*)$/.exec(said) ?? [];
  if (chassis === undefined || travel === undefined) return [];
  const travelNow = Number(travel);
  const next = { ...question, chassis, travelNow };
  const [, sizes] = /\(size ([^)]*)\)/.exec(about) ?? [];
  const rest = about.replace(/ \(size [^)]*\)/, '');
  const text = `${nameOf(chassis)}, ${words.part.now(travelNow)}`;
  if (sizes === undefined || question.size !== undefined) return [{ text: `${text}${rest}`, next }];
  return sizes
    .split(', ')
    .map((size) => ({ text: `${text}, ${words.part.size(size)}${rest}`, next: { ...next, size } }));
}

/** "--with damper=QN-DMP-155*1 --with spring=none" */
function buildChoice(question: QuestionInput, said: string): readonly Choice[] {
  const contents = [...said.matchAll(/--with ([^=\s]+)=([^\s*]+)(?:\*([0-9]+))?/g)].map(
    ([, slot = '', sku = '', quantity = '1']) =>
      [slot, sku === 'none' ? null : { sku, quantity: Number(quantity) }] as const,
  );
  if (contents.length === 0) return [];
  const text = contents
    .map(([slot, content]) =>
      words.part.holds(slot, content === null ? words.changes.none : words.pieces(content.sku, content.quantity)),
    )
    .join(', ');
  return [{ text, next: { ...question, with: { ...question.with, ...Object.fromEntries(contents) } } }];
}
