import bags from '../../worksheets/bags.json' with { type: 'json' };
import bracing from '../../worksheets/bracing.json' with { type: 'json' };
import cure from '../../worksheets/cure.json' with { type: 'json' };
import holes from '../../worksheets/holes.json' with { type: 'json' };
import job from '../../worksheets/job.json' with { type: 'json' };
import materials from '../../worksheets/materials.json' with { type: 'json' };
import labor from '../../worksheets/labor.json' with { type: 'json' };
import methods from '../../worksheets/methods.json' with { type: 'json' };
import posts from '../../worksheets/posts.json' with { type: 'json' };
import price from '../../worksheets/price.json' with { type: 'json' };
import prices from '../../worksheets/prices.json' with { type: 'json' };
import rates from '../../worksheets/rates.json' with { type: 'json' };
import removal from '../../worksheets/removal.json' with { type: 'json' };
import returnVisit from '../../worksheets/return_visit.json' with { type: 'json' };
import temperatures from '../../worksheets/temperatures.json' with { type: 'json' };
import type { SheetDefinition } from './definition.ts';

/** The built-in sheets, in the order of the work. */
export const SHEETS = [
  job,
  posts,
  holes,
  bags,
  prices,
  materials,
  bracing,
  temperatures,
  cure,
  removal,
  methods,
  rates,
  labor,
  price,
  returnVisit,
] as readonly SheetDefinition[];
