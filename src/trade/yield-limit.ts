/** One dowel-type fastener through a side member into a main member; inches, pounds, psi. */
export interface Joint {
  /** Diameter that bends: a nail's own, a wood screw's root. [in] */
  readonly diameter: number;
  /** Bearing length in the main member. [in] */
  readonly mainLength: number;
  /** Bearing length in the side member. [in] */
  readonly sideLength: number;
  /** Dowel bearing strength of the main member. [psi] */
  readonly mainBearing: number;
  /** Dowel bearing strength of the side member. [psi] */
  readonly sideBearing: number;
  /** Bending yield strength of the fastener. [psi] */
  readonly bendingYield: number;
}

/** Lateral value in single shear, the least of the six yield modes of NDS 2018 Table 12.3.1A, for diameters under 1/4 in. [lbf] */
export function singleShear(joint: Joint): number {
  return Math.min(...yieldModes(joint).map(([, value]) => value));
}

/** The six yield modes of NDS 2018 Table 12.3.1A by name, each with its value. [lbf] */
export function yieldModes(joint: Joint): readonly (readonly [mode: string, value: number])[] {
  const { diameter: d, mainLength: lm, sideLength: ls } = joint;
  const { mainBearing: fem, sideBearing: fes, bendingYield: fyb } = joint;
  const re = fem / fes;
  const rt = lm / ls;
  const rd = reduction(d);
  const k1 =
    (Math.sqrt(re + 2 * re ** 2 * (1 + rt + rt ** 2) + rt ** 2 * re ** 3) - re * (1 + rt)) /
    (1 + re);
  const k2 = -1 + Math.sqrt(2 * (1 + re) + (2 * fyb * (1 + 2 * re) * d ** 2) / (3 * fem * lm ** 2));
  const k3 =
    -1 + Math.sqrt((2 * (1 + re)) / re + (2 * fyb * (2 + re) * d ** 2) / (3 * fem * ls ** 2));
  return [
    ['Im', (d * lm * fem) / rd],
    ['Is', (d * ls * fes) / rd],
    ['II', (k1 * d * ls * fes) / rd],
    ['IIIm', (k2 * d * lm * fem) / ((1 + 2 * re) * rd)],
    ['IIIs', (k3 * d * ls * fem) / ((2 + re) * rd)],
    ['IV', (d ** 2 / rd) * Math.sqrt((2 * fem * fyb) / (3 * (1 + re)))],
  ];
}

/** Dowel bearing strength of wood for diameters under 1/4 in, to 50 psi as NDS 2018 Table 12.3.3 prints it. [psi] */
export function dowelBearing(gravity: number): number {
  return Math.round((16600 * gravity ** 1.84) / 50) * 50;
}

/** Bending yield strength by nominal diameter in inches, NDS 2018 Table I1. [psi] */
export function bendingYield(nominal: number): number {
  const [, strength] = BENDING_YIELD.find(([most]) => nominal <= most * (1 + 1e-9)) ?? [0, NaN];
  return strength;
}

const BENDING_YIELD = [
  [0.142, 100_000],
  [0.177, 90_000],
  [0.236, 80_000],
  [0.273, 70_000],
] as const;

/** Rd of NDS 2018 Table 12.3.1B for diameters under 1/4 in. */
function reduction(diameter: number): number {
  return diameter <= 0.17 ? 2.2 : 10 * diameter + 0.5;
}
