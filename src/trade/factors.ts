import { parseUnit } from '../units/index.ts';

/** SI per trade unit, for the formulas and tables that are printed in inches, feet and pounds. */
export const INCH = factor('in');
export const FOOT = factor('ft');
export const POUND_FORCE = factor('lbf');
export const PSF = factor('psf');
export const PSI = factor('psi');
export const PSF_PER_FOOT = factor('psf/ft');
export const MPH = factor('mph');
export const DAY = factor('day');
export const DEGREE = factor('deg');
/** 0 degC on the kelvin scale. [K] */
export const ICE_POINT = 273.15;

function factor(symbol: string): number {
  const unit = parseUnit(symbol);
  if (!unit) throw new Error(`No unit is called ${symbol}.`);
  return unit.factor;
}
