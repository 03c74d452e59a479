import type { Pascals } from '../../quantity/index.ts';
import type { Air } from '../linked.ts';
import type { RawAir, RawPart } from '../raw.ts';
import type { Path } from '../source-file.ts';
import type { RecordReader } from './context.ts';

/** Links what an air spring says of its chambers and pressures; a range upside down, or charts out of order, is a problem. */
export function linkAir(reader: RecordReader<RawPart>, raw: RawAir | undefined, path: Path): Air | null {
  if (!raw) return null;
  const least = reader.optional('pressure', raw.pressure?.least, [...path, 'pressure', 'least']);
  const greatest = reader.optional('pressure', raw.pressure?.greatest, [...path, 'pressure', 'greatest']);
  upright(reader, [least, greatest], [raw.pressure?.least, raw.pressure?.greatest], [...path, 'pressure']);
  return {
    positiveVolume: reader.optional('volume', raw['positive-volume'], [...path, 'positive-volume']),
    negativeVolume: reader.optional('volume', raw['negative-volume'], [...path, 'negative-volume']),
    equalisesAt: reader.optional('length', raw['equalises-at'], [...path, 'equalises-at']),
    negativePressure: reader.optional('pressure', raw['negative-pressure'], [...path, 'negative-pressure']),
    least,
    greatest,
    chart: linkChart(reader, raw, [...path, 'chart']),
  };
}

function linkChart(reader: RecordReader<RawPart>, raw: RawAir, path: Path): Air['chart'] {
  let last = 0;
  return (raw.chart ?? []).map((row, index) => {
    const at: Path = [...path, index];
    const from = reader.quantity('mass', row.from, [...at, 'from']);
    const to = reader.quantity('mass', row.to, [...at, 'to']);
    const least = reader.quantity('pressure', row.least, [...at, 'least']);
    const greatest = reader.quantity('pressure', row.greatest, [...at, 'greatest']);
    upright(reader, [least, greatest], [row.least, row.greatest], at);
    if (from > to || from < last)
      reader.problem(at, 'bad-value', {
        rule: 'rows from the lightest rider up, from not above to, no two rows for one rider',
        found: `${row.from} to ${row.to}`,
      });
    last = to;
    return { from, to, least, greatest };
  });
}

function upright(
  reader: RecordReader<RawPart>,
  [least, greatest]: readonly [Pascals | null, Pascals | null],
  [low, high]: readonly [string | undefined, string | undefined],
  path: Path,
): void {
  if (least === null || greatest === null || least <= greatest) return;
  reader.problem(path, 'bad-value', { rule: 'least not above greatest', found: `${low} to ${high}` });
}
