/** One option of a command. A new one is one line in a table. */
export interface OptionSpec {
  readonly name: string;
  /** What stands for the value in help; null for a switch. */
  readonly value: string | null;
  readonly help: string;
  readonly example: string;
  readonly repeat: 'once' | 'many';
  readonly needed: 'needed' | 'optional';
  /** The path in the question that this option fills, so that a fault there can name the option. */
  readonly path?: string;
}

type More = Partial<Pick<OptionSpec, 'repeat' | 'needed' | 'path'>>;
export const valued = (name: string, value: string, example: string, help: string, more: More = {}): OptionSpec => ({
  name,
  value,
  example,
  help,
  repeat: 'once',
  needed: 'optional',
  ...more,
});
export const toggle = (name: string, help: string): OptionSpec => ({
  name,
  value: null,
  example: '',
  help,
  repeat: 'once',
  needed: 'optional',
});

/** Options about where the catalogue, the stock and the shop are. */
export const FOLDER_OPTIONS: readonly OptionSpec[] = [
  valued('catalog', 'DIR', 'my-catalog', 'folder of the catalogue; else LEGWORK_CATALOG, else the demo catalogue'),
  valued('stock', 'FILE', 'stock.csv', 'stock and prices; else stock.csv in the folder of the catalogue, if there'),
  valued('shop', 'FILE', 'shop.yaml', 'labour rate, tax, tools; else shop.yaml in that folder, if there'),
];

/** Options of `plan`. */
export const PLAN_OPTIONS: readonly OptionSpec[] = [
  valued('chassis', 'ID', 'quennet-622', 'the fork in front of you, by its id in the catalogue', {
    needed: 'needed',
    path: 'chassis',
  }),
  valued('travel-now', 'LENGTH', '150', 'its travel now: 150, "150 mm" or "5.9 in"', {
    needed: 'needed',
    path: 'travelNow',
  }),
  valued('with', 'SLOT=SKU[*N]', 'damper=QN-DMP-185', 'what else is in it; SLOT=none for nothing', {
    repeat: 'many',
    path: 'with',
  }),
  valued('travel', 'LENGTH', '130', 'wanted: this travel', { path: 'wants.travel' }),
  valued('wheel', 'SIZE', '584', 'wanted: this wheel, by its bead-seat diameter in mm', { path: 'wants.wheel' }),
  valued('use', 'SKU', 'VH-W-33', 'wanted: this part, kit or supply is used', { repeat: 'many', path: 'wants.use' }),
  valued('keep', 'SLOT', 'damper', 'wanted: this slot stays as it is', { repeat: 'many', path: 'wants.keep' }),
  valued('renew', 'SLOT', 'wipers', 'wanted: this slot is renewed', { repeat: 'many', path: 'wants.renew' }),
  valued('service', 'NAME', 'quennet-lower-leg-service', 'wanted: this service is done', {
    repeat: 'many',
    path: 'wants.service',
  }),
  valued('spacers', 'N', '3', "wanted: so many volume spacers, not the maker's standard", { path: 'wants.spacers' }),
  valued(
    'have',
    'SKU[*AMOUNT][:used]',
    'VH-GREASE*5g',
    'at hand: pieces, or an amount of a supply; :used for a used part',
    { repeat: 'many', path: 'have' },
  ),
  valued('prefer', 'WHAT', 'time', 'money (the default), time or wait: what the plans are sorted by', {
    path: 'prefer',
  }),
  valued('supplies', 'HOW', 'bulk', 'packs (the default) or bulk: how oil, grease and the like are charged', {
    path: 'supplies',
  }),
  toggle('allow-unknown', 'plans may rest on fits that the catalogue neither states nor denies'),
  ...FOLDER_OPTIONS,
  valued('date', 'YYYY-MM-DD', '2026-03-01', 'the day the question is asked for; stands in the answer', {
    path: 'date',
  }),
  valued('format', 'FORMAT', 'json', 'text (the default), json, csv or md'),
  toggle('places', 'sources in json say file and line in the catalogue'),
  toggle('audit', 'have the answer checked by the independent auditor'),
  valued('step-limit', 'N', '50000000', 'search steps after which the answer is "not decided"', { path: 'stepLimit' }),
  toggle('no-cache', 'read the files anew and leave the cache alone'),
];

export const CHECK_OPTIONS: readonly OptionSpec[] = FOLDER_OPTIONS.filter(({ name }) => name !== 'catalog');

export const LIST_OPTIONS: readonly OptionSpec[] = [
  ...FOLDER_OPTIONS.filter(({ name }) => name === 'catalog'),
  valued('format', 'FORMAT', 'json', 'text (the default on a terminal) or json (the default elsewhere)'),
  toggle('no-cache', 'read the files anew and leave the cache alone'),
];
