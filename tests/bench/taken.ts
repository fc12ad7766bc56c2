import { performance } from 'node:perf_hooks';
import { processorTime } from './processor-time.js';

/** How long something took, in milliseconds: by the clock, and how long a core worked on it. */
export interface Taken {
  readonly elapsed: number;
  readonly worked: number;
}

/** Begins to measure what a process does, this one unless another is named. @returns what tells how long it has been */
export function stopwatch(pid: number | 'self' = 'self'): () => Taken {
  const worked = processorTime(pid);
  const begun = performance.now();
  return () => ({ elapsed: performance.now() - begun, worked: processorTime(pid) - worked });
}
