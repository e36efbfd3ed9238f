import './bags-picture.ts';
import './cutting-plan.ts';
export { Curve } from './curve.ts';
export { Elevation, type RowPick } from './elevation.ts';
export { HoleSection } from './hole-section.ts';
