/** One quantity drawn against another, worked out from the cells of a row. Numbers are in the units of the axes. */
export interface CurveView {
  /** What the curve shows, in a few words. */
  readonly heading: string;
  readonly x: CurveAxis;
  readonly y: CurveAxis;
  /** What this row has first, then what it is compared with; empty where nothing can be drawn. */
  readonly lines: readonly CurveLine[];
  readonly marks: readonly CurveMark[];
  readonly levels: readonly CurveLevel[];
  readonly stretches: readonly CurveStretch[];
  /** Why there is nothing to draw; blank where there is. */
  readonly waits: string;
  /** What belongs beside the curve: what it was drawn from, what it says, and its caution. */
  readonly notes: readonly string[];
}

/** One axis: numbers are already in the unit the label names. */
export interface CurveAxis {
  readonly label: string;
  /** As people write it: `in`, `lbf`, `%`. */
  readonly unit: string;
  readonly from?: number;
  readonly to?: number;
  /** The steps its numbers may be counted in, smallest first, where round tens would read badly. */
  readonly steps?: readonly number[];
}

/** A named line; up to three are told apart by dash and by the name at its end. */
export interface CurveLine {
  readonly name: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** A point that matters, with its words: `8.08 ft holds the wind`. */
export interface CurveMark {
  readonly x: number;
  readonly y: number;
  readonly label: string;
}

/** A level to reach, drawn across: `500 psi to rehang`. */
export interface CurveLevel {
  readonly y: number;
  readonly label: string;
}

/** A part of the way along, such as the hours for which a temperature holds. */
export interface CurveStretch {
  readonly from: number;
  readonly to: number;
  readonly label: string;
}
