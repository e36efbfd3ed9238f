import { describe, expect, it } from 'vitest';
import { postArea, postFace, postModulus, postSide } from '../../src/trade/post.ts';
import { expectExact, expectNear, read, refusal, si } from './si.ts';

// Dressed sizes: NDS 2018 Supplement Table 1A, engineeringtoolbox.com; the others as written.
const POSTS = [
  { size: '4x4', side: 3.5, face: 3.5, area: 12.25 },
  { size: '4x6', side: 3.5, face: 5.5, area: 19.25 },
  { size: '6x6', side: 5.5, face: 5.5, area: 30.25 },
  { size: '100 mm', side: 100 / 25.4, face: 100 / 25.4, area: 15.50003 },
  { size: '125 x 75 mm', side: 75 / 25.4, face: 125 / 25.4, area: 14.53128 },
  { size: '2 3/8 in round', side: 2.375, face: 2.375, area: 4.43014 },
];

describe('postSide and postFace', () => {
  it.each(POSTS)('are $side and $face in for $size', ({ size, side, face }) => {
    expectExact(read(postSide(size), 'in'), side);
    expectExact(read(postFace(size), 'in'), face);
  });

  it('refuse what is no size, in their own names', () => {
    expect(refusal(postSide('steel')).where).toBe('post_side');
    expect(refusal(postFace('100')).where).toBe('post_face');
  });
});

describe('dressed sizes in millimeters', () => {
  // NDS 2018 Supplement Table 1A and PS 20-05, printed to the millimeter.
  it.each([
    { size: '1x4', sides: [19, 89] },
    { size: '1x6', sides: [19, 140] },
    { size: '1x8', sides: [19, 184] },
    { size: '2x4', sides: [38, 89] },
    { size: '2x6', sides: [38, 140] },
    { size: '4x4', sides: [89, 89] },
    { size: '4x6', sides: [89, 140] },
    { size: '6x6', sides: [140, 140] },
  ])('are $sides for $size', ({ size, sides }) => {
    expectNear(read(postSide(size), 'mm'), sides[0]!, 0.5);
    expectNear(read(postFace(size), 'mm'), sides[1]!, 0.5);
  });
});

describe('postArea', () => {
  it.each(POSTS)('is $area in^2 for $size', ({ size, area }) => {
    expectNear(read(postArea(size), 'in^2'), area, 0.00001); // hand-worked
  });

  it('is 10.8% of a 12 in hole for a 4x4 and 26.7% for a 6x6', () => {
    // Hand-worked: 12.25 and 30.25 of 113.1 in^2.
    const hole = Math.PI * si(6, 'in') ** 2;
    expectNear(read(postArea('4x4')) / hole, 0.108, 0.0005);
    expectNear(read(postArea('6x6')) / hole, 0.267, 0.0005);
  });

  it('makes a 2x4 weigh the printed 1.28 and a 2x6 the printed 2.00 lb/ft', () => {
    // engineeringtoolbox.com, at 35 lb/ft^3.
    const weight = (size: string) => read(read(postArea(size)) * si(35, 'lb/ft^3'), 'lb/ft');
    expectNear(weight('2x4'), 1.28, 0.006);
    expectNear(weight('2x6'), 2, 0.006);
    expectNear(weight('1x6'), 1, 0.006);
  });
});

describe('postModulus', () => {
  // Hand-worked: b t^2 / 6 about the weaker axis.
  it.each([
    { size: '4x4', cubicInches: 7.1458 },
    { size: '6x6', cubicInches: 27.7292 },
    { size: '4x6', cubicInches: 11.2292 },
  ])('is $cubicInches in^3 for $size', ({ size, cubicInches }) => {
    expectNear(read(postModulus(size), 'in^3'), cubicInches, 0.0001);
  });

  it('does not depend on which side is written first', () => {
    expect(read(postModulus('75 x 125 mm'))).toBe(read(postModulus('125 x 75 mm')));
  });

  it('refuses a round post, whose wall it cannot know', () => {
    expect(refusal(postModulus('2 3/8 in round')).fix).toContain('maker');
  });
});
