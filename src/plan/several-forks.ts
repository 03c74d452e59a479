import type { Bike, BikeFork } from '../catalog/index.ts';
import { type Fault, fault } from './fault.ts';

/** What of a bike is known already: what is not may tell its forks apart. */
interface Known {
  readonly size: string | null;
  readonly month: string | null;
}

/** A bike that left the works with several forks: the options that tell them apart with the values that there are, and each fork. */
export function severalForks(bike: Bike, forks: readonly BikeFork[], known: Known): Fault {
  const sizes = bike.sizes.filter((size) => forks.some((fork) => fork.sizes === null || fork.sizes.includes(size)));
  const spans = [...new Set(forks.map(spanOf).filter((span) => span !== ''))];
  return fault('several-forks-of-bike', {
    bike: bike.id,
    sizes: known.size === null && differ(forks, ({ sizes: some }) => some?.join(' ') ?? '') ? sizes : [],
    built: known.month === null && differ(forks, spanOf) ? spans : [],
    choices: forks.map((fork) => {
      const size = fork.sizes === null ? '' : ` (size ${fork.sizes.join(', ')})`;
      const span = spanOf(fork);
      return `--chassis ${fork.chassis} --travel-now ${fork.travel / 1000}${size}${span === '' ? '' : ` (built ${span})`}`;
    }),
  });
}

const differ = (forks: readonly BikeFork[], of: (fork: BikeFork) => string): boolean => new Set(forks.map(of)).size > 1;

/** Months in which a bike left the works with a fork, in words: "from 2024-01", "to 2023-12". */
const spanOf = ({ months }: BikeFork): string =>
  [months?.from ? [`from ${months.from}`] : [], months?.to ? [`to ${months.to}`] : []].flat().join(' ');
