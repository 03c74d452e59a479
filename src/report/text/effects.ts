import type { GeometryEffects, Plan, SpringEffects } from '../../plan/index.ts';
import { wrapped } from '../layout.ts';
import type { Scene } from '../scene.ts';

/** Figures of the bike that people ask for; the rest stands in the JSON. */
const SHOWN = ['headAngle', 'bottomBracketHeight', 'reach', 'stack', 'trail'] as const;

/** What a plan changes on fork and bike. The maker's word comes first; what is worked out stands beside it. */
export function effectLines(scene: Scene, effects: Plan['effects']): string[] {
  const { travel, axleToCrown, mass, tyre, geometry, spring } = effects;
  const { trait, measured, effect } = scene.language.phrases;
  const line = (text: string): string[] => wrapped(scene.page, text, '  ');
  return [
    ...line(`${trait('travel')} ${effect.change(travel)}`),
    ...(axleToCrown === null
      ? []
      : line(`${effect.axleToCrown} ${effect.change(axleToCrown)}, ${measured(axleToCrown.measured)}`)),
    ...(mass === null ? [] : line(`${effect.mass} ${effect.change(mass)}`)),
    ...springWords(scene, spring).flatMap(line),
    ...(tyre === null ? [] : line(effect.tyre(tyre))),
    ...(geometry === null ? [] : geometryLines(scene, geometry)),
  ];
}

function geometryLines(scene: Scene, geometry: GeometryEffects): string[] {
  const { page, catalog, language } = scene;
  const { effect } = language.phrases;
  const bike = catalog.bikes.get(geometry.bike)?.name ?? geometry.bike;
  const figures = (one: Pick<GeometryEffects, (typeof SHOWN)[number]>): string[] =>
    SHOWN.flatMap((name) => {
      const change = one[name];
      return change === null ? [] : wrapped(page, `${effect.figure(name)} ${effect.change(change)}`, '    ');
    });
  const { atSag } = geometry;
  return [
    ...wrapped(page, effect.onBike(bike, geometry.size), '  '),
    ...figures(geometry),
    ...(atSag === null ? [] : [...wrapped(page, effect.atSag(atSag.forkSag, atSag.rearSag), '  '), ...figures(atSag)]),
  ];
}

/** Spring and rider in sentences. Pressures only for a rider whom the question names. */
export function springWords({ language }: Pick<Scene, 'language'>, spring: SpringEffects | null): string[] {
  if (spring?.after === null || spring === null) return [];
  const { rider, before, after } = spring;
  const { effect } = language.phrases;
  const [from, ratio] = [before?.forceAtEnd ?? null, before?.endRatio ?? null];
  return [
    ...(rider.named && after.chart ? [effect.byChart(rider, before?.chart ?? null, after.chart)] : []),
    ...(rider.named && after.start ? [effect.workedOut(rider, before?.start ?? null, after.start)] : []),
    ...(rider.named && after.kind === 'coil' && after.sag !== null
      ? [effect.coilSag(rider, { from: before?.sag ?? null, to: after.sag, unit: 'mm' }, after.sag / after.travel)]
      : []),
    ...(after.forceAtEnd === null
      ? []
      : [
          effect.end(
            rider,
            { from: from ?? after.forceAtEnd, to: after.forceAtEnd, unit: 'N' },
            { from: ratio, to: after.endRatio, unit: '' },
            after.forceAtSag ?? rider.load,
          ),
        ]),
    ...(spring.spacers === null ? [] : [effect.spacers(spring.spacers)]),
  ];
}
