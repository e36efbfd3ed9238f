/** A list of so many posts in mostly distinct cells; `mark` stands behind each length, blank for units in the headers. */
export function longList(lines: number, mark: string): string {
  const draw = drawing();
  const length = (least: number, span: number) => `${(least + span * draw()).toFixed(3)}${mark}`;
  const rows = Array.from({ length: lines }, (_, at) =>
    [
      at + 1,
      (8 * at + draw()).toFixed(2),
      length(0, 6),
      length(47, 1),
      'NSEW'[Math.floor(4 * draw())],
      length(70, 4),
      length(0, 2),
      draw() < 0.7 ? 'firm' : 'moves at grade',
      `note ${String(at)} seen by crew`,
    ].join(','),
  );
  const unit = mark === '' ? ' (in)' : '';
  return [
    `Post,Sta (ft),Lean gap${unit},Over${unit},Toward,Height${unit},Probe${unit},Rock test,Note`,
    ...rows,
  ].join('\n');
}

/** Numbers from 0 to 1 that look drawn and are the same every time: x' = 1664525 x + 1013904223 mod 2^32. */
function drawing(): () => number {
  let x = 42;
  return () => {
    x = (Math.imul(1664525, x) + 1013904223) >>> 0;
    return x / 2 ** 32;
  };
}
