import type { Chassis } from '../catalog/index.ts';
import type { Measured } from '../fitment/index.ts';

/** Everything of a chassis that a part on the bike can be compared with. */
export function chassisMeasures(chassis: Chassis): Measured {
  const dimensions = new Map(chassis.dimensions);
  const set = (name: string, value: Parameters<typeof dimensions.set>[1] | null | undefined): void => {
    if (value != null) dimensions.set(name, value);
  };
  set('spacing', chassis.axle.spacing);
  set('rotor-plane', chassis.axle.rotorPlane);
  set('crown-race', chassis.steerer?.crownRace);
  const interfaces = new Map(chassis.interfaces);
  interfaces.set('axle', chassis.axle.standard.toLowerCase());
  if (chassis.brake) interfaces.set('brake-mount', chassis.brake.mount);
  return { dimensions, interfaces };
}
