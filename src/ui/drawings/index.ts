export { BagsPicture } from './bags-picture.ts';
export { Curve, type Axis, type CurveLevel, type CurveLine, type CurveMark } from './curve.ts';
export { Elevation, type RowPick } from './elevation.ts';
export { HoleSection } from './hole-section.ts';
