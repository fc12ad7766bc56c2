import { performance } from 'node:perf_hooks';
import { processorTime } from './processor-time.js';

/** How long something took, in milliseconds: by the clock, and how long a core worked on it. */
export interface Taken {
  readonly elapsed: number;
  readonly worked: number;
}

/** Begins to measure what this process does. @returns what ends it */
export function stopwatch(): () => Taken {
  const worked = processorTime('self');
  const begun = performance.now();
  return () => ({ elapsed: performance.now() - begun, worked: processorTime('self') - worked });
}
