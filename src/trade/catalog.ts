import { GROUND_RULES } from './catalog-ground.ts';
import { WIND_RULES } from './catalog-wind.ts';
import { MATERIAL_RULES } from './catalog-material.ts';
import { POST_RULES } from './catalog-post.ts';
import { WORK_RULES } from './catalog-work.ts';
import type { Rule } from './rule.ts';

/** Every trade function that a formula may call, by its name there. */
export const CATALOG: ReadonlyMap<string, Rule> = new Map(
  [...POST_RULES, ...GROUND_RULES, ...WIND_RULES, ...MATERIAL_RULES, ...WORK_RULES].map((rule) => [
    rule.name,
    rule,
  ]),
);
