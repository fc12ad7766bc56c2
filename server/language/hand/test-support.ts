import { TextDocument } from 'vscode-languageserver-textdocument';
import type { TextEdit } from 'vscode-languageserver-types';
import type { Grip, Scene } from '../../drawing/scene.js';
import type { FileAnswer } from '../../plan/plan.js';
import { type Bench, everything, openPlan, settled } from '../test-support.js';
import type { HandChange } from './change.js';

/** A plan whose last object, the jug, has nothing said of it yet. */
export const ROOM = `canvas 80 x 50 cm
focus upper right of thirds
divide golden, thirds
object table
  shape rectangle (10, 30) to (50, 45)
object jug
`;

/** A plan in a service of its own, and what hands do to it. */
export interface HandBench {
  readonly scene: Scene;
  readonly grips: readonly Grip[];
  grip(key: string): Grip;
  /** The edits of a change, or why it is refused. */
  write(change: HandChange, version?: number): readonly TextEdit[] | string;
  /** The drawing after a change that is only tried, or why it is refused. */
  tried(change: HandChange, version?: number): Scene | string;
  /** The drawing of the document as it is now. */
  again(): Scene | undefined;
  /** The text after a change; throws the reason when it is refused. */
  after(change: HandChange): string;
  /** What is selected after a change. */
  selected(change: HandChange): string | undefined;
}

export function handBench(text: string): HandBench {
  return benchOf(openPlan(text));
}

/** The same when the files that the plan names have been fetched. */
export async function handBenchWith(
  text: string,
  files: Readonly<Record<string, FileAnswer>>,
): Promise<HandBench> {
  const plan = openPlan(text, everything, files);
  plan.service.diagnostics(plan.uri);
  await settled();
  return benchOf(plan);
}

function benchOf({ service, uri, text }: Bench): HandBench {
  const draw = (): Scene | undefined => service.scene(uri, 'drawing', { handling: true });
  const scene = draw();
  if (!scene) throw new Error('no scene');
  const grips = scene.handling?.grips ?? [];
  const asked = (change: HandChange, version = 1) => {
    const answer = service.writeChange({ textDocument: { uri }, version, change });
    if (answer === null) throw new Error('not open');
    return answer;
  };
  const applied = (edits: readonly TextEdit[]): string =>
    TextDocument.applyEdits(TextDocument.create(uri, 'mahlstick', 1, text), [...edits]);
  return {
    scene,
    grips,
    grip(key) {
      const found = grips.find((grip) => grip.key === key);
      if (!found) throw new Error(`no grip ${key} among ${grips.map((grip) => grip.key).join(', ')}`);
      return found;
    },
    write(change, version) {
      const answer = asked(change, version);
      return 'refused' in answer ? answer.refused : answer.edits;
    },
    tried(change, version = 1) {
      const answer = service.tryChange({ textDocument: { uri }, version, view: 'drawing', change });
      if (answer === null) throw new Error('not open');
      return 'refused' in answer ? answer.refused : answer.scene;
    },
    again: draw,
    after(change) {
      const answer = asked(change);
      if ('refused' in answer) throw new Error(answer.refused);
      return applied(answer.edits);
    },
    selected(change) {
      const answer = asked(change);
      if ('refused' in answer || !answer.select) return undefined;
      return TextDocument.create(uri, 'mahlstick', 2, applied(answer.edits)).getText(answer.select);
    },
  };
}

/** The lines that are different in the text after a move of a grip by so much. */
export function movedBy(text: string, key: string, right: number, down: number): string {
  const bench = handBench(text);
  const { at } = bench.grip(key);
  const after = bench.after({ kind: 'move', grip: key, to: { x: at.x + right, y: at.y + down } });
  return differing(text, after);
}

/** The lines of a text that another does not have in the same place, without the indentation. */
export function differing(before: string, after: string): string {
  const old = before.split(/\r\n|\n/u);
  const now = after.split(/\r\n|\n/u);
  return now
    .filter((line, index) => (old.length === now.length ? line !== old[index] : !old.includes(line)))
    .map((line) => line.trim())
    .join('\n');
}
