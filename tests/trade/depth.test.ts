import { describe, expect, it } from 'vitest';
import { depthByHeight, holeWidthByPost } from '../../src/trade/depth.ts';
import { expectExact, expectNear, read, refusal, si } from './si.ts';

describe('depthByHeight', () => {
  // ASTM F567 5.1 and Byesville, Ohio, municipal code: 24 in at 4 ft, 3 in more per foot; 6 ft hand-worked.
  it.each([
    { feet: 4, inches: 24 },
    { feet: 3, inches: 24 },
    { feet: 5, inches: 27 },
    { feet: 6, inches: 30 },
    { feet: 8, inches: 36 },
  ])('is $inches in for a $feet ft fence', ({ feet, inches }) => {
    expectExact(read(depthByHeight(si(feet, 'ft')), 'in'), inches);
  });

  it('counts parts of a foot in proportion', () => {
    expectNear(read(depthByHeight(si(66, 'in')), 'in'), 28.5, 1e-9); // hand-worked
  });

  it('refuses a fence with no height', () => {
    expect(refusal(depthByHeight(0)).found).toContain('“0 ft”');
  });
});

describe('holeWidthByPost', () => {
  // ASTM F567 5.1: 4 times up to 4 in, 3 times above.
  it.each([
    { post: 2.375, hole: 9.5 },
    { post: 3.5, hole: 14 },
    { post: 4, hole: 16 },
    { post: 6.625, hole: 19.875 },
  ])('is $hole in for a post of $post in', ({ post, hole }) => {
    expectExact(read(holeWidthByPost(si(post, 'in')), 'in'), hole);
  });

  it('takes a post on the line of 4 in as within it, whatever unit it came in', () => {
    expectNear(read(holeWidthByPost(0.1016 * (1 + 1e-12)), 'in'), 16, 1e-9);
  });

  it('refuses a post of no size', () => {
    expect(refusal(holeWidthByPost(-0.1)).where).toBe('hole_width_by_post');
  });
});
