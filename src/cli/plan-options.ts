import type { Fill, Reader } from './fill.ts';
import { FOLDER_OPTIONS, NO_CACHE, type OptionSpec, PICTURE, toggle, valued } from './options.ts';
import {
  readAngle,
  readBounds,
  readChoice,
  readContent,
  readDate,
  readHave,
  readLength,
  readMass,
  readRate,
  readSetting,
  readShare,
  readText,
  readTrait,
  readWheel,
  readWhole,
} from './read-values.ts';
import { showBounds, showContent, showHave, showShare } from './show-values.ts';

const one = (path: string, read: Reader, usual?: unknown): Fill => ({ as: 'one', path, read, show: String, usual });
const list = (path: string): Fill => ({ as: 'list', path, read: readText, show: String });
const length = (path: string): Fill => one(path, readLength);
const bounds = (path: string): Fill => ({ as: 'one', path, read: readBounds, show: showBounds });
const share = (path: string): Fill => ({ as: 'one', path, read: readShare, show: showShare });
const spacers: Reader = (text) => readWhole(text, 0, 'a whole number of spacers');
const steps: Reader = (text) => readWhole(text, 1, 'a whole number above 0');
const prefer: Reader = (text) => readChoice(text, ['money', 'time', 'wait']);
const supplies: Reader = (text) => readChoice(text, ['packs', 'bulk']);

/** Who rides: what force, sag and a first pressure are worked out for. */
export const RIDER_OPTIONS: readonly OptionSpec[] = [
  valued(
    'rider-mass',
    'MASS',
    '"80 kg"',
    'the rider with clothes, shoes, helmet, pack and water',
    one('rider.mass', readMass),
  ),
  valued('sag', 'SHARE', '25%', 'wanted sag, of the travel; else 25 %', share('rider.sag')),
  valued('front-share', 'SHARE', '40%', 'share of the weight on the fork; else 40 %', share('rider.frontShare')),
  valued(
    'head-angle',
    'ANGLE',
    '65.5',
    "steering angle from the horizontal; else the bike's, else 66 deg",
    one('rider.headAngle', readAngle),
  ),
  valued(
    'rear-sag',
    'LENGTH',
    '45',
    'how far the rear axle moves up under the rider, for the bike as it is ridden',
    length('rider.rearSag'),
  ),
];

/** Options of `plan`, in the order of the help. */
export const PLAN_OPTIONS: readonly OptionSpec[] = [
  valued(
    'chassis',
    'ID',
    'quennet-622',
    'the fork in front of you, by its id in the catalogue',
    one('chassis', readText),
  ),
  valued('bike', 'ID', 'example-trail', 'instead: the bike it left the works with', one('bike', readText)),
  valued('size', 'SIZE', 'M', 'frame size of that bike', one('size', readText)),
  valued('travel-now', 'LENGTH', '150', 'its travel now: 150, "150 mm" or "5.9 in"', length('travelNow')),
  valued('serial', 'NUMBER', 'AB1234', 'its serial number', one('serial', readText)),
  valued('built', 'YYYY-MM', '2024-05', 'the month it was made in', one('built', readText)),
  valued('with', 'SLOT=SKU[*N]', 'damper=QN-DMP-185', 'what else is in it; SLOT=none for nothing', {
    as: 'record',
    path: 'with',
    read: readContent,
    show: showContent,
  }),
  valued('maybe', 'SLOT=SKU[*N]', 'damper=QN-DMP-185', 'what may be in it instead: worked out for each', {
    as: 'lists',
    path: 'maybe',
    read: readContent,
    show: showContent,
  }),
  valued('setting', 'NAME=LENGTH', 'stanchion-height=20', 'a setting of the fork now', {
    as: 'record',
    path: 'settings',
    read: readSetting,
    show: String,
  }),
  valued('steerer-length', 'LENGTH', '180', 'the length of its steerer', length('steererLength')),
  valued('travel', 'LENGTH', '130', 'wanted: this travel', length('wants.travel')),
  valued(
    'wheel',
    'SIZE',
    '584',
    'wanted: this wheel, by its bead-seat diameter in mm; or 26, 27.5 or 29 in',
    one('wants.wheel', readWheel),
  ),
  valued('use', 'SKU', 'VH-W-33', 'wanted: this part, kit or supply is used', list('wants.use')),
  valued('keep', 'SLOT', 'damper', 'wanted: this slot stays as it is', list('wants.keep')),
  valued('renew', 'SLOT', 'wipers', 'wanted: this slot is renewed', list('wants.renew')),
  valued('service', 'NAME', 'quennet-lower-leg-service', 'wanted: this service is done', list('wants.service')),
  valued(
    'spacers',
    'N',
    '3',
    "wanted: so many volume spacers, not the maker's standard",
    one('wants.spacers', spacers),
  ),
  valued('trait', 'SLOT.TRAIT=VALUE', 'damper.lockout=none', 'wanted: a part with this trait', {
    as: 'record',
    path: 'wants.traits',
    read: readTrait,
    show: String,
  }),
  valued('coil-rate', 'RATE', '"7.5 N/mm"', 'wanted: a coil of this rate, N/mm', one('wants.coilRate', readRate)),
  valued('axle-to-crown', 'LEAST..GREATEST', '510..525', 'wanted: within these bounds', bounds('wants.axleToCrown')),
  valued('offset', 'LEAST..GREATEST', '42..46', 'wanted: within these bounds', bounds('wants.offset')),
  valued('onto', 'BIKE', 'example-trail', 'the bike that the fork must suit afterwards', one('onto', readText)),
  valued('onto-size', 'SIZE', 'M', 'frame size of that bike', one('ontoSize', readText)),
  valued('tyre', 'WIDTH-BEAD', '60-622', "the tyre, where it is not the bike's", one('tyre', readText)),
  ...RIDER_OPTIONS,
  valued(
    'have',
    'SKU[*AMOUNT][:used]',
    'VH-GREASE*5g',
    'at hand: pieces, or an amount of a supply; :used for a used part',
    { as: 'list', path: 'have', read: readHave, show: showHave },
  ),
  valued(
    'prefer',
    'WHAT',
    'time',
    'money (the default), time or wait: what the plans are sorted by',
    one('prefer', prefer, 'money'),
  ),
  valued(
    'supplies',
    'HOW',
    'bulk',
    'packs (the default) or bulk: how oil, grease and the like are charged',
    one('supplies', supplies, 'packs'),
  ),
  toggle('substitutes', 'a supply that is said to be equal may be used', { as: 'switch', path: 'substitutes' }),
  toggle('allow-unknown', 'plans may rest on fits that the catalogue neither states nor denies', {
    as: 'switch',
    path: 'allowUnknown',
  }),
  toggle('why', 'say of every line why it stands there', { as: 'switch', path: 'why' }),
  ...FOLDER_OPTIONS,
  valued(
    'date',
    'YYYY-MM-DD',
    '2026-03-01',
    'the day the question is asked for; stands in the answer',
    one('date', readDate),
  ),
  valued('format', 'FORMAT', 'json', 'text (the default), json, csv or md'),
  PICTURE,
  toggle('places', 'sources in json say file and line in the catalogue'),
  toggle('audit', 'have the answer checked by the independent auditor'),
  valued(
    'step-limit',
    'N',
    '50000000',
    'search steps after which the answer is "not decided"',
    one('stepLimit', steps, 20_000_000),
  ),
  NO_CACHE,
];
