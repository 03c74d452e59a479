import type { Chassis, Tyre } from '../catalog/index.ts';
import { wheelOn } from '../fork/index.ts';
import { type Metres, metres, metresOf, type RoomAt, tyreRoom, tyreSize } from '../physics/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { Effects } from './answer.ts';
import { tyreAfter } from './bike-drawing.ts';
import type { Prepared } from './prepare.ts';
import { tenths } from './rounding.ts';

type TyreEffects = NonNullable<Effects['tyre']>;

/**
 * What is left around the tyre of the bike when the fork of the plan is at the bottom, by its designation and by how far tyres differ
 * from that. Null where no bike is named, where its tyre is not known, and where the chassis states no room at all.
 */
export function tyreEffects({ now, wants }: Prepared, chassis: Chassis): TyreEffects | null {
  const context = now.bike;
  const mounted = context?.tyre ?? null;
  const { crown, arch, width } = chassis.tyreRoom;
  if (!context || !mounted || (crown === null && arch === null && width === null)) return null;
  const tyre: Tyre = tyreAfter(mounted, wheelOn(chassis, context, wants));
  const size = tyreSize(metres(tyre.width / 1000), metres(tyre.bead / 1000));
  if (!size.ok) return null;
  const room = { crown: inMetres(crown), arch: inMetres(arch), width: inMetres(width) };
  // How large a gap must be differs by standard and class of bicycle, so none is taken off: what is left is shown.
  const found = tyreRoom(room, size.value, metres(0));
  if (!found.ok) return null;
  return {
    designation: tyre.designation,
    diameter: {
      nominal: tenths(size.value.diameter * 1000),
      least: tenths(size.value.least * 1000),
      greatest: tenths(size.value.greatest * 1000),
    },
    verdict: found.value.verdict,
    crown: left(found.value.crown),
    arch: left(found.value.arch),
    width: left(found.value.width),
  };
}

const inMetres = (room: Micrometres | null): Metres | null => (room === null ? null : metresOf(room));

const left = ({ margin }: RoomAt): TyreEffects['crown'] =>
  margin && { nominal: tenths(margin.nominal * 1000), least: tenths(margin.least * 1000) };
