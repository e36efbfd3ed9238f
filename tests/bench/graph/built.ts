import type { Notebook } from '../../../src/notebook/index.ts';
import { Engine } from '../../../src/worksheet/engine.ts';
import { definitionsOf } from '../../../src/worksheet/own.ts';
import { largeJob } from '../large-job.ts';

/** A job with its sheets at work, and what they took of the memory, the notebook itself not counted. */
export interface Built {
  readonly notebook: Notebook;
  readonly engine: Engine;
  readonly bytes: number;
}

const all = new Map<number, Built>();

/** The job of so many posts. It is built once for the whole bench, as 100,000 take a while. */
export function builtJob(posts: number): Built {
  const built = all.get(posts) ?? build(posts);
  all.set(posts, built);
  return built;
}

function build(posts: number): Built {
  const notebook = largeJob(posts);
  // The notebook's own index of its rows is none of the graph's.
  notebook.place('posts', 'r1');
  const before = used();
  const engine = new Engine(definitionsOf(notebook.document.own), notebook);
  return { notebook, engine, bytes: used() - before };
}

function used(): number {
  if (!globalThis.gc) throw new Error('Run the bench with --expose-gc.');
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}
