import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CATALOG, type Argument, type Rule } from '../../src/trade/index.ts';
import {
  isProblem,
  parseUnit,
  sameDimension,
  type Answer,
  type Kind,
} from '../../src/units/index.ts';
import { refusal } from './si.ts';

const RULES = [...CATALOG.values()].map((rule) => ({ name: rule.name, rule }));

/** Any finite number, or one of an everyday size, so that both edges and work are met. */
const number = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: 0, max: 30, noNaN: true }),
  fc.constantFrom(0, 0.5, 1, 8, 10, 293.15),
);
const text = fc.oneof(
  fc.string(),
  fc.constantFrom('4x4', '6x6', '100 mm', '125 x 75 mm', '2 3/8 in round', '0 mm', '16x16'),
);

function argument(kind: Kind): fc.Arbitrary<Argument> {
  if (kind.type === 'text') return text;
  if (kind.type === 'choice') return fc.oneof(fc.constantFrom(...kind.choices), text);
  if (kind.type === 'list') return fc.array(number, { maxLength: 4 });
  return number;
}

function argumentsOf({ parameters }: Rule): fc.Arbitrary<Argument[]> {
  return fc.tuple(...parameters.map(({ kind }) => argument(kind)));
}

// The outside names and argument orders that users' formulas rely on.
const PROMISED = `
  lean_angle(gap, level_length) top_offset(gap, level_length, height)
  combined_gap(gap_across, gap_along) lean_bearing(gap_north, gap_east)
  post_bow(gap_top, gap_mid, gap_bottom) pivot_height(move_low, height_low, move_high, height_high)
  strength_left(side, rot_depth) gate_sag(diagonal_long, diagonal_short, leaf_height)
  depth_by_height(fence_height) hole_width_by_post(post_size) square_width(side)
  lateral_embedment(force, arm, width, bearing)
  lateral_embedment_restrained(force, arm, width, bearing)
  lateral_capacity(depth, arm, width, bearing) width_for_capacity(force, arm, depth, bearing)
  soil_bearing(soil) sand_capacity(depth, arm, width, unit_weight, friction_angle)
  clay_capacity(depth, arm, width, cohesion, dead_zone) frost_grip(width, frost_depth, bond)
  velocity_pressure(speed, exposure, height) wall_force_coefficient(length, height, top_height)
  open_area_factor(solid_ratio) fence_wind(speed, exposure, height, solid_ratio, length)
  end_wind(speed, exposure, height, solid_ratio, length, start, end)
  round_hole(diameter, depth) square_hole(side, depth) tapered_hole(area_top, area_bottom, depth)
  crown(hole_width, post_size, crown_height)
  crown_volume(hole_area, post_area, crown_height, top_of_concrete) whole_bags(volume, yield)
  strength_fraction(age, cement) age_for_strength(fraction, cement)
  maturity(temperatures, durations, datum) equivalent_age(temperatures, durations, activation)
  screw_diameter(gauge)
  screw_lateral(gauge, side_thickness, length, gravity)
  nail_lateral(diameter, length, side_thickness, gravity)
  screw_withdrawal(gauge, gravity) nail_withdrawal(diameter, gravity)
  dressed(size) stock_length(needed, lengths)
  price_at_markup(cost, rate) price_at_margin(cost, rate)
  markup_of_margin(margin) margin_of_markup(markup)
  post_side(size) post_face(size) post_area(size) post_modulus(size)
  post_bending(moment, size) prop_length(height, reach)
  prop_load(force, height_of_force, prop_height, reach) prop_wind(speed)
  gap_factor(length, height, gap) end_gap_factor(height, gap)
  age_at_equivalent(temperatures, durations, pour, wanted, activation)
  equivalent_at_age(temperatures, durations, pour, age, activation)
  age_at_maturity(temperatures, durations, pour, wanted, datum)
  eurocode_strength(age, hardening)
  equal_step(drops) least_clearance(drops, gap) buried_panels(drops, gap) step_clearance(drops, gap, post) step_reach(drops, gap)
  cut_count(pieces, counts, stocks, priced, prices, kerf, stock)
  cut_count_of(pieces, counts, areas, area, stocks, priced, priced_areas, prices, kerf, stock)
`;

describe('CATALOG', () => {
  it('holds the promised functions with their arguments in order, and no others', () => {
    const promised = PROMISED.match(/\w+\([^)]*\)/g) ?? [];
    const held = RULES.map(
      ({ name, rule }) =>
        `${name}(${rule.parameters.map((parameter) => parameter.name).join(', ')})`,
    );
    expect(promised.length).toBeGreaterThan(0);
    expect(held.sort()).toEqual([...promised].sort());
  });

  it.each(RULES)('reads $name in a unit of its own kind', ({ rule }) => {
    const unit = parseUnit(rule.unit);
    const { result } = rule;
    expect(unit).toBeDefined();
    expect(result.type === 'quantity' && sameDimension(result.dimension, unit!.dimension)).toBe(
      true,
    );
  });

  it.each(RULES)('says what $name is, in one sentence, and where it comes from', ({ rule }) => {
    expect(rule.meaning).toMatch(/^[A-Z].*\.$/);
    expect(rule.source).not.toBe('');
  });

  it.each(RULES.filter(({ rule }) => /Wind|wind|Embedment|embedment|force/.test(rule.meaning)))(
    'puts a caution beside $name',
    ({ rule }) => {
      expect(rule.caution).toMatch(/\.$/);
    },
  );

  it.each(RULES)(
    'never answers $name with NaN or Infinity, and refuses in its name',
    ({ rule }) => {
      const apply = rule.apply as (...values: Argument[]) => Answer;
      fc.assert(
        fc.property(argumentsOf(rule), (values) => {
          const answer = apply(...values);
          if (isProblem(answer)) expect(refusal(answer).where).toBe(rule.name);
          else expect(Number.isFinite(answer)).toBe(true);
        }),
        { numRuns: 300 },
      );
    },
  );
});
