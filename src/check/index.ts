import { type Catalog, eachOnce, type Problem } from '../catalog/index.ts';
import { bikeDoubts, bikeProblems } from './bikes.ts';
import { bodyDoubts } from './bodies.ts';
import { buildProblems } from './builds.ts';
import { clauseDoubts } from './clauses.ts';
import { drawingDoubts } from './drawings.ts';
import { factoryDoubts } from './factory.ts';
import { oilDoubts } from './oils.ts';
import { partProblems } from './parts.ts';
import { reachDoubts } from './reach.ts';
import { replacementDoubts } from './replacements.ts';
import { silenceDoubts } from './silence.ts';
import { springDoubts } from './springs.ts';
import { supplyDoubts } from './supplies.ts';
import { uselessDoubts } from './useless.ts';
import { workDoubts, workProblems } from './work.ts';

/** What a catalogue claims and cannot hold, though every record by itself is in order. With any of these it is not used. Quick: a plan waits for it. */
export const contradictions = (catalog: Catalog): readonly Problem[] => [
  ...buildProblems(catalog),
  ...partProblems(catalog),
  ...workProblems(catalog),
  ...bikeProblems(catalog),
];

/**
 * What an author should look at, though answers can be worked out: factory builds and bikes that break rules, travels that no plan reaches, parts
 * that fit nothing, silence where the catalogue claims to be complete. Asks the engine itself, so it is slower than a plan. It keeps quiet about whatever
 * may be on purpose: a tool or a specification that nothing uses, a measure that one part leaves out, a role without a complete list.
 */
export function doubts(catalog: Catalog): readonly Problem[] {
  const ofClauses = clauseDoubts(catalog);
  const explained = new Set(ofClauses.filter(({ code }) => KEEPS_OUT.has(code)).map(({ params: { sku } }) => sku));
  return eachOnce([
    ...bodyDoubts(catalog),
    ...factoryDoubts(catalog),
    ...bikeDoubts(catalog),
    ...drawingDoubts(catalog),
    ...reachDoubts(catalog).filter(
      ({ code, params: { sku } }) => code !== 'travel-out-of-reach' || !explained.has(sku),
    ),
    ...ofClauses,
    ...uselessDoubts(catalog),
    ...replacementDoubts(catalog),
    ...silenceDoubts(catalog),
    ...supplyDoubts(catalog),
    ...springDoubts(catalog),
    ...oilDoubts(catalog),
    ...workDoubts(catalog),
  ]);
}

/** What keeps a part out of every plan: that it gives no travel there follows, and is not said again. */
const KEEPS_OUT: ReadonlySet<string> = new Set(['need-cannot-be-met', 'spacers-above-slot']);

/** Both: all that `legwork catalog check` says of the sense of a catalogue. */
export const senseProblems = (catalog: Catalog): readonly Problem[] => [...contradictions(catalog), ...doubts(catalog)];
