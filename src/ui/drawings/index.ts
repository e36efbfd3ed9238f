import './bags-picture.ts';
export { Curve } from './curve.ts';
export { Elevation, type RowPick } from './elevation.ts';
export { HoleSection } from './hole-section.ts';
