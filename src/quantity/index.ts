export { amountNumber, roundUpAmount, type SupplyUnit } from './amount.ts';
export {
  type Dimension,
  type DimensionUnits,
  held,
  type Micrometres,
  type Milligrams,
  type MillinewtonMetres,
  type MilliSquareMillimetresPerSecond,
  type Minor,
  type Minutes,
  millimetres,
  minor,
  type NewtonsPerMetre,
} from './brands.ts';
export { groupBy } from './group.ts';
export { formatMoney, minorDigits, multiplyDivide, parseMoney } from './money.ts';
export { byCodeUnit, sortedBy } from './order.ts';
