import type { PlanDocument } from './records.ts';
import { words } from './words/words.ts';

type Effects = PlanDocument['effects'];
type Spring = NonNullable<Effects['spring']>;
interface Change {
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** What a plan does, as figures before and after. */
export function EffectsTable({ effects }: { readonly effects: Effects }) {
  const { effects: say } = words;
  const rows = [...forkRows(effects), ...bikeRows(effects), ...springRows(effects)];
  return (
    <section aria-labelledby="effects">
      <h2 id="effects">{say.title}</h2>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">{say.measure}</th>
            <th scope="col">{say.before}</th>
            <th scope="col">{say.after}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, from, to }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{from}</td>
              <td>{to}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {effects.tyre ? <p>{say.tyre(effects.tyre)}</p> : null}
      {effects.spring && !effects.spring.rider.named ? <p class="quiet">{say.assumed}</p> : null}
      <p>
        <a href="#pictures">{words.pictures.link}</a>
      </p>
    </section>
  );
}

interface Figure {
  readonly from: number | null;
  readonly to: number | null;
  readonly unit: string;
}
const shown = (value: number | null, unit: string): string =>
  value === null ? words.effects.unknown : `${words.decimal(value)}${unit === '°' ? '' : '\u00A0'}${unit}`;
const change = (name: string, figure: Figure | null): readonly Change[] =>
  figure === null ? [] : [{ name, from: shown(figure.from, figure.unit), to: shown(figure.to, figure.unit) }];

function forkRows({ travel, axleToCrown, mass }: Effects): readonly Change[] {
  const { effects: say } = words;
  return [...change(say.travel, travel), ...change(say.axleToCrown, axleToCrown), ...change(say.mass, mass)];
}

const FIGURES = ['headAngle', 'seatAngle', 'trail', 'wheelbase', 'bottomBracketHeight', 'reach', 'stack'] as const;

function bikeRows({ geometry }: Effects): readonly Change[] {
  if (geometry === null) return [];
  return FIGURES.flatMap((name) => change(words.effects.figures[name], geometry[name]));
}

/** What the spring does. A pressure, or a sag of a coil, is for somebody: without a named rider there is none to show. */
function springRows({ spring }: Effects): readonly Change[] {
  if (spring === null) return [];
  const { before, after, rider } = spring;
  const { effects: say } = words;
  const who = say.rider(rider.mass);
  const both = (name: string, of: (side: NonNullable<Spring['before']>) => string | null): readonly Change[] => {
    const [from, to] = [before && of(before), after && of(after)];
    return from === null && to === null ? [] : [{ name, from: from ?? say.unknown, to: to ?? say.unknown }];
  };
  return [
    ...(rider.named
      ? [
          ...both(say.pressure(`${who}, ${say.byChart}`), ({ chart }) => chart && pressure(chart)),
          ...both(say.pressure(`${who}, ${say.worked}`), ({ start }) => start && pressure(start)),
          ...both(`${say.sag}, ${who}`, ({ kind, sag }) => (kind === 'coil' && sag !== null ? shown(sag, 'mm') : null)),
        ]
      : []),
    ...both(`${say.endForce}, ${who}`, ({ forceAtEnd }) => (forceAtEnd === null ? null : shown(forceAtEnd, 'N'))),
    ...both(say.spacers, ({ volumeSpacers, kind }) => (kind === 'air' ? words.decimal(volumeSpacers) : null)),
  ];
}

interface Pumped {
  readonly psi: { readonly least: number; readonly greatest: number } | null;
  readonly bar: { readonly least: number; readonly greatest: number } | null;
}
const pressure = ({ bar, psi }: Pumped): string | null => {
  const range = (of: Pumped['bar'], unit: string): readonly string[] =>
    of === null ? [] : [`${words.decimal(of.least)}–${words.decimal(of.greatest)}\u00A0${unit}`];
  const [metric, other] = [range(bar, 'bar'), range(psi, 'psi')];
  if (metric.length === 0) return other[0] ?? null;
  return other.length === 0 ? (metric[0] ?? null) : `${metric[0]} (${other[0]})`;
};
