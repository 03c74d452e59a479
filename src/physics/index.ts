export { airCurve, airForce, airPressures, airRate, type ChamberPressures, type CurvePoint } from './air-force.ts';
export type { AirSpring, AirState, NegativeSide } from './air-spring.ts';
export { airWork } from './air-work.ts';
export { axisLength, type MeasuredAs, straightLength } from './axle-to-crown.ts';
export { type CoilChoice, type CoilQuestion, type CoilSag, coilForRider } from './coil-choice.ts';
export { type CoilSpring, coilForce, coilWork } from './coil-spring.ts';
export { endOfStrokeRatio } from './end-of-stroke.ts';
export {
  fromPressureUnit,
  fromTorqueUnit,
  inPressureUnit,
  inTorqueUnit,
  PASCALS_PER,
  type PressureUnit,
  type TorqueUnit,
} from './factors.ts';
export {
  type BikeGeometry,
  changedGeometry,
  type GeometryChange,
  type GeometryEffect,
  type Stance,
} from './geometry.ts';
export {
  cubicMetresOf,
  degreesOf,
  gaugePressureOf,
  kilogramsOf,
  metresOf,
  newtonMetresOf,
  springRateOf,
  squareMetresOf,
  viscosityOf,
} from './held.ts';
export { type HexKey, hexKey } from './hex-key.ts';
export { ISO_GRADES, type IsoGrade, isoGrade } from './iso-grade.ts';
export { axialLoad, type RiderLoad } from './load.ts';
export { compareOils, type NamedOil, type OilComparison, type Thickness } from './oil-equal.ts';
export type { Computed, Outside, OutsideCode, OutsideParams } from './outcome.ts';
export { onPumpScale, type PumpRange } from './pump-scale.ts';
export { type RetainingRing, type RingPliers, retainingRing, ringPliers } from './retaining-ring.ts';
export { pressureForForce, rateForForce, travelUnder } from './sag.ts';
export {
  countsDisagree,
  type SpacerAnswer,
  type SpacerCountEffect,
  type SpacerQuestion,
  spacersKeepingEnd,
} from './spacers.ts';
export {
  type ChartRow,
  chartRow,
  type PressureLimits,
  type SetUpQuestion,
  type StartPressure,
  startPressure,
} from './start-pressure.ts';
export { type Steering, steering } from './steering.ts';
export { pressureElsewhere, type Surroundings } from './temperature.ts';
export { type SettingWrench, type WrenchVerdict, wrenchesFor, wrenchVerdict } from './torque-tool.ts';
export {
  CLEARANCE_TEST,
  clearanceTestTravel,
  gapAtFullCompression,
  type RoomAnswer,
  type RoomAt,
  type RoomVerdict,
  type TyreRoom,
  tyreRoom,
} from './tyre-room.ts';
export { type TyreSize, tyreFromDesignation, tyreSize } from './tyre-size.ts';
export * from './units.ts';
export { type OilViscosity, viscosityAt, walther, zOf } from './viscosity.ts';
export { type ViscosityIndex, viscosityIndex } from './viscosity-index.ts';
