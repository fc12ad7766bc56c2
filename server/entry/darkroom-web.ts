import { Darkroom, type SquareNews } from '../photograph/darkroom.js';

/**
 * Squares up photographs in a worker that the server's worker begins. It is made of one line that loads the bundle, as
 * a worker must come from where its maker does, and what an editor installs comes from elsewhere.
 * @param bundle address of `dist/photograph.js`
 */
export function webDarkroom(bundle: string): Darkroom {
  return new Darkroom(({ heard, failed }) => {
    const line = `importScripts(${JSON.stringify(bundle)});`;
    const address = URL.createObjectURL(new Blob([line], { type: 'text/javascript' }));
    const worker = new Worker(address);
    worker.onmessage = ({ data }: MessageEvent<SquareNews>) => heard(data);
    worker.onerror = () => failed();
    return {
      post: (order) => worker.postMessage(order),
      end: () => {
        worker.terminate();
        URL.revokeObjectURL(address);
      },
    };
  });
}
