import { type Fault, fault } from './finding.ts';
import { number, row } from './read.ts';
import { ontoAnother, type Scene } from './scene.ts';

/** What a bike asks of a fork and the maker answers: `null` is silence. */
interface Rating {
  readonly code: string;
  readonly asked: boolean;
  readonly met: boolean | null;
}

/**
 * `not-rated-motor`, `not-rated-category`, `dual-crown-not-approved` (section 10). They are facts between family and
 * bike, which no plan changes: on its own bike they are not judged.
 */
function ratings(scene: Scene): readonly Rating[] {
  const bike = scene.question.ride?.bike;
  if (!bike || !ontoAnother(scene)) return [];
  const rated = row(scene.family.rated);
  const [category, most] = [number(bike.category), number(rated.category)];
  return [
    {
      code: 'not-rated-motor',
      asked: bike['motor-assisted'] === true,
      met: said(rated['motor-assisted']),
    },
    {
      code: 'not-rated-category',
      asked: category !== null,
      met: most === null ? null : (category ?? 0) <= most,
    },
    {
      code: 'dual-crown-not-approved',
      asked: scene.family.crown === 'dual',
      met: said(bike['dual-crown']),
    },
  ];
}

const said = (value: unknown): boolean | null => (typeof value === 'boolean' ? value : null);

export function* checkRatings(scene: Scene): Iterable<Fault> {
  for (const { code, asked, met } of ratings(scene)) if (asked && met === false) yield fault(code, 'by the records');
}

/** What is asked and nobody answers is not known. */
export const silentRatings = (scene: Scene): readonly string[] =>
  ratings(scene)
    .filter(({ asked, met }) => asked && met === null)
    .map(({ code }) => code);
