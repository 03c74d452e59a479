/** Names of slots and roles in the trade's words, where the id alone does not read well. */
const ROLES: Readonly<Record<string, string>> = {
  upper: 'upper',
  lowers: 'lowers',
  'travel-spacers': 'travel spacers',
  'volume-spacers': 'volume spacers',
  'top-cap': 'top cap',
  'foam-rings': 'foam rings',
  'foot-seals': 'foot seals',
  wipers: 'wiper seals',
  'cap-ring': 'top-cap ring',
  'retaining-ring': 'retaining ring',
  bath: 'bath oil',
  damper: 'damper',
  kit: 'kit',
};
export const roleName = (name: string): string => ROLES[name] ?? name.replaceAll('-', ' ');

const TRAITS: Readonly<Record<string, string>> = {
  wheel: 'wheel size',
  axle: 'axle',
  offset: 'offset',
  steerer: 'steerer',
  'brake-mount': 'brake mount',
  travel: 'travel',
};
/** A kept trait or a measure: `damper.lockout` is "lockout of the damper". */
export function traitName(name: string): string {
  const known = TRAITS[name];
  if (known !== undefined) return known;
  const [slot = '', trait] = name.split('.');
  return trait === undefined ? roleName(name) : `${trait.replaceAll('-', ' ')} of the ${roleName(slot)}`;
}
