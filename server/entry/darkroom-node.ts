import { Worker } from 'node:worker_threads';
import { Darkroom, type SquareNews } from '../photograph/darkroom.js';

/** Photographs decoded whole, and no more than that: see `server/photograph/limits.ts`. */
const limits = { maxOldGenerationSizeMb: 2048 };

/**
 * Squares up photographs in a thread of node.
 * @param bundle path of `dist/photograph.js`, which gives itself there what it takes of a web worker
 */
export function nodeDarkroom(bundle: string): Darkroom {
  return new Darkroom(({ heard, failed }) => {
    const worker = new Worker(bundle, { resourceLimits: limits });
    worker.on('message', (news: SquareNews) => heard(news));
    worker.on('error', failed);
    worker.on('exit', failed);
    worker.unref();
    return {
      post: (order) => worker.postMessage(order),
      end: () => void worker.terminate(),
    };
  });
}
