/** Where a value stands in the first rows of a column, by the array's own search: most columns of 100,000 rows hold none. */
export function* places(
  values: { indexOf(value: number, from?: number): number },
  value: number,
  count: number,
): Generator<number> {
  let row = values.indexOf(value);
  for (; row >= 0 && row < count; row = values.indexOf(value, row + 1)) yield row;
}
