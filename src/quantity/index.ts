export { amountNumber, roundUpAmount, type SupplyUnit } from './amount.ts';
export {
  type Dimension,
  type DimensionUnits,
  held,
  type Microlitres,
  type Micrometres,
  type Millidegrees,
  type Milligrams,
  type MillinewtonMetres,
  type MilliSquareMillimetres,
  type MilliSquareMillimetresPerSecond,
  type Minor,
  type Minutes,
  millimetres,
  minor,
  type NewtonsPerMetre,
  type Pascals,
} from './brands.ts';
export { groupBy } from './group.ts';
export { formatMoney, minorDigits, multiplyDivide, parseMoney } from './money.ts';
export { byCodeUnit, sortedBy } from './order.ts';
export { beadSeatOf, wheelWords } from './wheel.ts';
