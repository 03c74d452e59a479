import { type Catalog, listsOf, type Part } from '../catalog/index.ts';
import { givingClause, type Now } from '../fork/index.ts';
import {
  axialLoad,
  celsius,
  coilForRider,
  fromPressureUnit,
  inPressureUnit,
  pressureElsewhere,
  type SpringRate,
  springRateOf,
} from '../physics/index.ts';
import type { Flag, SpringSide, Unworded } from './answer.ts';
import { readAsked } from './asked.ts';
import { drawingOf } from './bike-drawing.ts';
import { springFlags } from './effect-flags.ts';
import { badQuestion, type Fault } from './fault.ts';
import { nowFlags } from './flags.ts';
import { type LoadedSpring, loadedSpring } from './loaded-spring.ts';
import { type Prepared, prepare } from './prepare.ts';
import { questionSchema } from './question.ts';
import { AROUND, type Rider, riderOf } from './rider.ts';
import { rounded, tenths } from './rounding.ts';
import { type SetUpDocument, setUpQuestionSchema } from './set-up-schema.ts';
import { reason, springSide } from './spring-side.ts';
import type { World } from './world.ts';

export type SetUpAnswer = Unworded<SetUpDocument>;
export type SetUpReply =
  | { readonly kind: 'answer'; readonly answer: SetUpAnswer }
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] };

/** How far a coil of the list may miss the wanted sag, as a share of travel: lists go in steps. Common practice, no source. */
const COIL_TOLERANCE = 0.05;
/** Temperatures at which it is said what a pump would show, °C. */
const ELSEWHERE = [-10, 0, 10, 20, 30, 40] as const;

/**
 * A starting pressure, or coil, for a rider on the fork in front of you. The maker's chart comes first and its ends are ends;
 * what is worked out stands beside it. Takes no clock, file, network or randomness.
 */
export function setUp(world: World, input: unknown): SetUpReply {
  const read = readAsked(setUpQuestionSchema, input);
  if (!read.ok) return { kind: 'faults', faults: badQuestion(read.wrong) };
  const { filledAt, ...asked } = read.value;
  const { prepared, faults } = prepare(world, questionSchema.parse(asked));
  if (!prepared) return { kind: 'faults', faults };
  const { now } = prepared;
  const { catalog } = world;
  const loaded = loadedSpring(catalog, now.build, now.identity);
  const drawing = now.bike ? drawingOf(now.bike) : null;
  const rider = riderOf(asked.rider, drawing, loaded?.part ?? null);
  const load = axialLoad(rider.load);
  const spring = springSide(loaded, rider);
  const coils = loaded?.kind === 'coil' ? coilsFor(catalog, now, loaded, rider) : null;
  const shownRider: SetUpAnswer['rider'] = {
    mass: tenths(rider.load.rider),
    frontShare: rider.load.frontShare,
    headAngle: tenths(rider.load.headAngle),
    sag: rider.sag,
    load: load.ok ? rounded(load.value) : 0,
    assumed: [
      ...(asked.rider.frontShare === undefined ? (['front-share'] as const) : []),
      ...(asked.rider.headAngle === undefined && drawing === null ? (['head-angle'] as const) : []),
      ...(asked.rider.sag === undefined ? (['sag'] as const) : []),
    ],
  };
  return {
    kind: 'answer',
    answer: {
      format: 1,
      catalog: catalog.hash,
      question: read.value,
      status: statusOf(spring, coils),
      now: {
        chassis: now.build.chassis.id,
        travel: now.travel / 1000,
        spring: now.build.slots.get('spring') ?? null,
        coil: now.build.slots.get('coil') ?? null,
        volumeSpacers: now.build.slots.get('volume-spacers')?.quantity ?? 0,
        bike: now.bike?.bike.id ?? null,
      },
      rider: shownRider,
      spring,
      lacking: loaded?.kind === 'not-stated' ? loaded.lacking : loaded === null ? ['spring'] : [],
      coils,
      temperature: spring ? elsewhere(spring, filledAt) : null,
      flags: flagsOf(world, prepared, spring, shownRider),
    },
  };
}

/** A row of the chart is an answer, whatever is worked out beside it. */
function statusOf(spring: SpringSide | null, coils: SetUpAnswer['coils']): SetUpAnswer['status'] {
  if (spring === null) return 'not-known';
  if (coils) return coils.suit.length > 0 ? 'answered' : 'beyond';
  return spring.chart !== null || spring.start !== null ? 'answered' : 'beyond';
}

/** The coils of the family that go into this chassis, by the sag that each gives the rider. */
function coilsFor(
  catalog: Catalog,
  now: Now,
  { coil }: Extract<LoadedSpring, { kind: 'coil' }>,
  rider: Rider,
): SetUpAnswer['coils'] {
  const { chassis } = now.build;
  const listed = listsOf(catalog)
    .partsAbout('coil', chassis.family)
    .flatMap((part): { readonly part: Part; readonly rate: SpringRate }[] => {
      const clause = givingClause(catalog, part, chassis, now.identity);
      return clause === null || clause.not || part.rate === null ? [] : [{ part, rate: springRateOf(part.rate) }];
    });
  const choice = coilForRider({
    coil,
    rates: listed.map(({ rate }) => rate),
    rider: rider.load,
    sag: { wanted: rider.sag, tolerance: COIL_TOLERANCE },
  });
  if (!choice.ok) return { wantedRate: null, suit: [], outside: reason(choice) };
  return {
    wantedRate: tenths(choice.value.wanted / 1000),
    suit: choice.value.suit.flatMap(({ rate, sag }) =>
      listed
        .filter((one) => one.rate === rate)
        .map(({ part }) => ({ sku: part.sku, name: part.name, rate: rate / 1000, sag: Math.round(sag * 1000) / 1000 })),
    ),
    outside: null,
  };
}

/** What the middle of the maker's row, or else of what was worked out, shows at other temperatures: the same air, the same volume. */
function elsewhere({ chart, start }: SpringSide, filledAt: number): SetUpAnswer['temperature'] {
  const range = chart?.psi ?? start?.psi ?? null;
  if (range === null) return null;
  const psi = Math.round((range.least + range.greatest) / 2);
  const filled = fromPressureUnit(psi, 'psi');
  const from = { temperature: celsius(filledAt), ambient: AROUND };
  const shown = (degrees: number, pressure: typeof filled) => ({
    celsius: degrees,
    psi: rounded(inPressureUnit(pressure, 'psi')),
    bar: tenths(inPressureUnit(pressure, 'bar')),
  });
  return {
    filled: shown(filledAt, filled),
    shows: ELSEWHERE.flatMap((degrees) => {
      const pressure = pressureElsewhere(filled, from, { temperature: celsius(degrees), ambient: AROUND });
      return pressure.ok ? [shown(degrees, pressure.value)] : [];
    }),
  };
}

/** What is assumed of the spring that is in it, and where the rider is beyond what the maker prints. */
function flagsOf(
  world: World,
  prepared: Prepared,
  spring: SpringSide | null,
  rider: SetUpAnswer['rider'],
): readonly Flag[] {
  const about = ['spring', 'coil', 'volume-spacers'];
  const assumed = nowFlags(world, prepared).filter(
    ({ code, params }) =>
      code === 'now-derived' ||
      (code === 'now-assumed' && about.includes(String(params.slot))) ||
      (code === 'now-breaks-rule' && params.rule === 'volume-spacer-count'),
  );
  const { assumed: _, ...named } = rider;
  return [
    ...assumed,
    ...springFlags(world.catalog, { rider: { ...named, named: true }, before: null, after: spring, spacers: null }),
  ];
}
