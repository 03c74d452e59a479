import type { Answer } from '../../plan/index.ts';
import { wheelWords } from '../../quantity/index.ts';
import type { Scene } from '../scene.ts';

type Wants = Answer['question']['wants'];

/** Wishes in one line: "130 mm of travel, keep the damper, on Example trail bike, size m". */
export function wishedFor(scene: Scene, { wants, onto, ontoSize }: Answer['question']): string {
  const words = [...wantList(scene, wants), ...(onto === undefined ? [] : [`on ${bikeWords(scene, onto, ontoSize)}`])];
  return words.length === 0 ? 'nothing' : words.join(', ');
}

/** A bike by its name, with the size where one was named. */
export const bikeWords = ({ catalog }: Scene, bike: string, size: string | undefined): string =>
  `${catalog.bikes.get(bike)?.name ?? bike}${size === undefined ? '' : `, size ${size}`}`;

/** Each wish in words. */
export function wantList({ language, catalog }: Scene, wants: Wants): string[] {
  const { role, trait } = language.phrases;
  return [
    ...(wants.travel === undefined ? [] : [`${wants.travel} mm of travel`]),
    ...(wants.wheel === undefined ? [] : [`a ${wheelWords(wants.wheel)} wheel`]),
    ...(wants.coilRate === undefined ? [] : [`a coil of ${wants.coilRate} N/mm`]),
    ...boundWords('axle-to-crown', wants.axleToCrown),
    ...boundWords('offset', wants.offset),
    ...Object.entries(wants.traits).map(([name, value]) => `${trait(name)}: ${value}`),
    ...wants.use.map((sku) => `use ${sku}`),
    ...wants.keep.map((slot) => `keep the ${role(slot)}`),
    ...wants.renew.map((slot) => `renew the ${role(slot)}`),
    ...wants.service.map((id) => catalog.services.get(id)?.name ?? id),
    ...(wants.spacers === undefined ? [] : [`${wants.spacers} volume spacer${wants.spacers === 1 ? '' : 's'}`]),
  ];
}

function boundWords(name: string, bounds: Wants['offset']): string[] {
  if (bounds === undefined) return [];
  const { least, greatest } = bounds;
  return [least === greatest ? `${name} ${least} mm` : `${name} ${least} mm to ${greatest} mm`];
}
