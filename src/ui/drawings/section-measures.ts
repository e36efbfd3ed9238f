import { px } from './figures.ts';
import type { HoleReadings, Measured } from './hole-readings.ts';
import { spreadApart } from './labels.ts';
import type { Point } from './run.ts';

/** A vertical dimension with its figure. */
export interface Dimension {
  readonly x: number;
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** Where its figure stands. */
  readonly figure: number;
  readonly word: string;
  readonly side: 'left' | 'right';
  readonly wanted: boolean;
}

/** A label to the right of the hole, led to what it names. */
export interface SideLabel {
  readonly text: string;
  readonly at: Point;
  readonly x: number;
  readonly y: number;
}

interface Levels {
  readonly grade: number;
  readonly bottom: number;
  readonly foot: number;
  readonly right: number;
}

/** The vertical dimensions of a hole: reached against wanted where it is short, else hole and embedment. */
export function dimensions(
  { embedment, reached, depth }: HoleReadings,
  wish: Measured | undefined,
  frost: number | undefined,
  { grade, bottom, wanted, foot, left, right }: Levels & { left: number; wanted: number },
): readonly Dimension[] {
  const near = { x: left - 20, from: grade, side: 'left', wanted: false } as const;
  const far = { x: right + 20, from: grade, side: 'right' } as const;
  const middle = (to: number): number => clearOf(frost, grade, to);
  const hole = {
    ...near,
    to: bottom,
    text: (reached ?? depth)?.text ?? '',
    figure: middle(bottom),
  };
  if (wish) {
    return [
      { ...hole, word: 'reached' },
      { ...far, to: wanted, text: wish.text, word: 'wanted', figure: middle(wanted), wanted: true },
    ];
  }
  if (!embedment) return [{ ...hole, word: 'hole' }];
  return [
    { ...hole, word: 'hole' },
    {
      ...far,
      to: foot,
      text: embedment.text,
      word: 'in the ground',
      figure: middle(foot),
      wanted: false,
    },
  ];
}

// The frost line runs the whole width: a figure on it could not be read.
function clearOf(frost: number | undefined, from: number, to: number): number {
  const middle = (from + to) / 2;
  const near = frost !== undefined && Math.abs(frost - middle - 6) < 26;
  return px(near ? from + (to - from) * 0.25 : middle);
}

/** The labels right of a hole, far enough apart to read. */
export function sideLabels(
  hole: HoleReadings,
  {
    grade,
    bottom,
    foot,
    right,
    postRight,
    down,
  }: Levels & { readonly postRight: number; down(below: number): number },
): readonly SideLabel[] {
  const top = down(-(hole.concreteTop ?? 0));
  const wanted = [
    ...(hole.crown && hole.concreteTop !== undefined
      ? [
          {
            text: `crown ${hole.crown.text}`,
            at: {
              x: px((postRight + right) / 2),
              y: px((top + down(-(hole.concreteTop + hole.crown.size))) / 2),
            },
          },
        ]
      : []),
    ...(hole.concreteTop !== undefined && hole.concreteTop < 0
      ? [{ text: `concrete ${hole.concreteTopText} down`, at: { x: right, y: top } }]
      : []),
    ...(hole.gravel && bottom > foot
      ? [{ text: `gravel ${hole.gravel.text}`, at: { x: right - 8, y: px((foot + bottom) / 2) } }]
      : []),
  ];
  const heights = spreadApart(
    wanted.map(({ at }) => (at.y < grade ? grade - 26 : at.y)),
    20,
  );
  return wanted.map((label, index) => ({
    ...label,
    x: right + 44,
    y: px((heights[index] ?? label.at.y) + 5),
  }));
}
