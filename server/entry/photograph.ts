import type { SquareNews, SquareOrder } from '../photograph/darkroom.js';
import { squarePhotograph } from '../photograph/square.js';

/**
 * The darkroom's thread, `dist/photograph.js`: in a web worker as it is, in a thread of node with the few names of one,
 * which the build puts before it. It squares up one photograph after the other.
 */
interface Scope {
  onmessage: ((event: { readonly data: SquareOrder }) => void) | null;
  readonly postMessage: (news: SquareNews, transfer?: readonly ArrayBufferLike[]) => void;
}

const scope = globalThis as unknown as Scope;

scope.onmessage = ({ data: { bytes, squaring, content } }) => {
  const options = {
    progress: (part: number) => scope.postMessage({ part }),
    ...(content === undefined ? {} : { content }),
  };
  void squarePhotograph(bytes, squaring, options).then((answer) =>
    scope.postMessage(
      { answer },
      answer.ok ? [answer.picture.lab.buffer, answer.picture.shown.jpeg.buffer] : [],
    ),
  );
};
