/** The format this build writes. Raised by one whenever the shape of the JSON changes, with a step below. */
export const FORMAT = 2;

/** A notebook's JSON, by part. */
export type Parts = ReadonlyMap<string, unknown>;

/** What makes the JSON of one format into that of the next. A step never changes: files of its format exist. */
const STEPS: ReadonlyMap<number, (parts: Parts) => Parts> = new Map([
  // Columns and sheets of the user's own came with 2; late files of 1 hold some already.
  [1, (parts) => (parts.has('own') ? parts : new Map([...parts, ['own', []]]))],
]);

/** The parts in the format of this build; as they are where they are newer, undefined where no build wrote them. */
export function upgraded(parts: Parts): Parts | undefined {
  const format = parts.get('format');
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1) return undefined;
  let now = parts;
  for (let at = format; at < FORMAT; at += 1) {
    const step = STEPS.get(at);
    if (!step) return undefined;
    now = new Map([...step(now), ['format', at + 1]]);
  }
  return now;
}
