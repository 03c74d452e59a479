import type { PictureWords } from '../../../picture/index.ts';
import { roleName } from './names.ts';
import { counted } from './shared.ts';

const tenth = (value: number): string => String(Math.round(value * 10) / 10);
const hundredth = (value: number): string => String(Math.round(value * 100) / 100);

const BIKE = {
  headAngle: 'head angle',
  wheelbase: 'wheelbase',
  trail: 'trail',
  bottomBracket: 'bottom bracket',
  reach: 'reach',
  stack: 'stack',
} as const;

/** What a picture says. */
export const picture: PictureWords = {
  tag: 'en',
  before: 'before',
  after: 'after',
  now: 'as it is',
  title: 'What the change does',
  description: 'Spring curves, the bike from its side and the fork, each described below. Black lines on white.',
  // 96 pixels of a sheet are an inch, 25.4 mm (CSS Values and Units, section 6.2)
  scale: (pixels) => `to scale, 1 : ${tenth(96 / 25.4 / pixels)} where 96 pixels are an inch`,
  spring: {
    title: 'Spring: force over travel',
    description: ({ rider, before, after }) =>
      [before, after]
        .flatMap((curve, at) =>
          curve === null
            ? []
            : [
                `${at === 0 ? 'Before, dashed' : before === null ? 'As it is' : 'After, bold'}: ${curve.sku} with ${counted(curve.volumeSpacers, 'volume spacer')}, ${tenth(curve.travel)} mm of travel, ${Math.round(curve.sag.force)} N at ${tenth(curve.sag.travel)} mm of sag, ${Math.round(curve.hit)} N at the end in a hard hit.`,
              ],
        )
        .concat(`For a rider of ${tenth(rider.mass)} kg with kit.`)
        .join(' '),
    travel: 'travel used, mm',
    force: 'force, N',
    curve: (which, { sku, volumeSpacers, travel }) =>
      `${which}: ${sku}${volumeSpacers === 0 ? '' : `, ${counted(volumeSpacers, 'volume spacer')}`}, ${tenth(travel)} mm`,
    sag: (force) => `at sag, ${Math.round(force)} N`,
    hit: 'at the end of the stroke, in a hard hit',
    note: ({ rider: { mass, named, sag, frontShare }, before, after }) => {
      const filled = [before, after].some((curve) => curve?.kind === 'air')
        ? `filled for ${tenth(sag * 100)} % of sag`
        : 'without preload';
      return `Moved slowly, ${filled} under ${tenth(mass)} kg with kit${named ? '' : ' (nobody was named)'}, ${tenth(frontShare * 100)} % of it on the fork. A starting point.`;
    },
  },
  bike: {
    title: ({ name, size, sag }) =>
      `${name}${size === null ? '' : `, size ${size}`}: from its side, unloaded${sag === null ? '' : ' and with its rider'}`,
    views: ({ sag }) =>
      sag === null
        ? ['before', 'after']
        : [
            'unloaded',
            `with its rider: the fork ${tenth(sag.fork)} mm in${sag.rear === 0 ? ', nothing at the rear axle' : `, the rear axle ${tenth(sag.rear)} mm up`}`,
          ],
    description: ({ before, after, sag }) =>
      `${sag === null ? 'Before above, after below' : 'Unloaded above, at the wanted sag below'}, drawn apart. Head angle ${hundredth(before.headAngle)}° and ${hundredth(after.headAngle)}°, trail ${tenth(before.trail)} mm and ${tenth(after.trail)} mm, wheelbase ${tenth(before.wheelbase)} mm and ${tenth(after.wheelbase)} mm${
        before.bottomBracket && after.bottomBracket
          ? `, bottom bracket ${tenth(before.bottomBracket.height)} mm and ${tenth(after.bottomBracket.height)} mm above the ground`
          : ''
      }.`,
    figure: (name, value) => [BIKE[name], name === 'headAngle' ? `${hundredth(value)}°` : `${tenth(value)} mm`],
  },
  fork: {
    title: 'The fork, seen by its rider',
    description: (before, after) => {
      const length = ({ travel, along }: typeof after): string =>
        `${tenth(travel)} mm of travel${along === null ? '' : `, ${tenth(along)} mm from axle to crown`}`;
      const changed = after.slots.filter((slot) => slot.changed).map(({ slot }) => roleName(slot));
      return `${before === null ? `${length(after)}.` : `Before: ${length(before)}. After: ${length(after)}.`}${changed.length === 0 ? '' : ` Picked out: ${changed.join(', ')}.`}`;
    },
    figure: (name, value) => [name === 'travel' ? 'travel' : 'axle to crown', `${tenth(value)} mm`],
    leg: (side, holds) => `${side}: ${holds}`,
    slot: (slot, content) =>
      `${roleName(slot)}: ${content === null ? 'none' : `${content.quantity === 1 ? '' : `${content.quantity} x `}${content.sku}`}`,
    schematic: 'axle-to-crown not known: not to scale',
  },
};
