import { Notebook, type Row } from '../../src/notebook/index.ts';
import { startDocument } from '../../src/worksheet/index.ts';

/** Job inputs that leave no cell of the run waiting. */
const INPUTS: readonly (readonly [string, string])[] = [
  ['soil', 'gravel'],
  ['bearing', '200 psf/ft'],
  ['frost_depth', '24 in'],
  ['wind_speed', '90 mph'],
  ['exposure', 'B'],
  ['depth_rule', 'below frost'],
  ['air_temperature', '60 degF'],
  ['pour_time', '2026-05-04 10:00'],
];

/** A notebook of one run with this many posts, the same on every machine; one post in five is rotten. */
export function largeJob(posts: number): Notebook {
  const document = startDocument(`${String(posts)} posts`);
  for (const [name, entry] of INPUTS) document.inputs.set(name, entry);
  document.sheets.set('posts', largeRows(posts));
  return new Notebook(document);
}

function largeRows(posts: number): Row[] {
  const draw = drawing();
  let station = 0;
  return Array.from({ length: posts }, (_, at): Row => {
    // Bays of 7 ft to 8 ft 8 in, to the sixteenth, as a tape gives them.
    if (at > 0) station += 84 + Math.floor(draw() * 320) / 16;
    const isRotten = draw() < 0.2;
    return {
      id: `r${String(at + 1)}`,
      cells: new Map([
        ['post', String(at + 1)],
        ['station', `${String(station)} in`],
        ['lean_gap', `${String(Math.floor(draw() * 15) + 1)}/16 in`],
        ['level_length', '48 in'],
        ['lean_toward', draw() < 0.5 ? 'yard' : 'street'],
        ['probe_depth', isRotten ? '1 1/8 in' : '0 in'],
        ['rock_test', draw() < 0.7 ? 'firm' : 'moves at grade'],
        ['footing_depth', `${String(29 + Math.floor(draw() * 16))} in`],
      ]),
    };
  });
}

/** Numbers from 0 to 1 that look drawn and are the same every time: x' = 1664525 x + 1013904223 mod 2^32. */
function drawing(): () => number {
  let x = 42;
  return () => {
    x = (Math.imul(1664525, x) + 1013904223) >>> 0;
    return x / 2 ** 32;
  };
}
