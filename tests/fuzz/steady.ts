import { everything, planUri } from '../../server/language/test-support.js';
import type { LanguageService } from '../../server/language/language-service.js';
import { createLanguageService } from '../../server/language/service.js';
import { views } from '../../server/drawing/scene.js';
import { randomFrom } from '../../server/measure/photograph/test-support.js';

/** The plan as it is at first, and now and then again. */
export const steadyPlan = `plan "The oven door"
canvas 60 x 40 cm
focus upper right
budget value dark 60%, middle 30%, light 10% within 5%
colour soot #2b2a2e dominant
colour brick 2.5YR 4/6 complement
palette
  paint white PW6
  paint ultra PB29
object wall
  plane background
  shape rectangle (0, 0) to (60, 40)
  colour soot
  value 1
object oven
  shape outline (27, 10) (52, 8) (54, 40) (26, 40)
  colour brick
  value 2
object door, dominant
  shape smooth (30, 20) (42, 19) (43, 33) (29, 32)
  value 5
object jar
  shape from "jar0.svg" part "a"
  at (12, 30)
  value 3
lead floor from lower left corner through (20, 34) to door
`;

const whole = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };

/**
 * Changes a text at chance, each time to something that was not there before: its figures, colours, names, files and
 * lines; now and then all is taken back.
 */
export function steadyChanges(seed: number): (text: string) => string {
  const random = randomFrom(seed);
  const below = (most: number): number => Math.floor(random() * most);
  const changes: readonly ((text: string) => string)[] = [
    (text) => text.replace(/(?<=outline \()[\d.]+/u, () => (20 + 10 * random()).toFixed(6)),
    (text) => text.replace(/(?<=smooth \()[\d.]+/u, () => (25 + 10 * random()).toFixed(6)),
    (text) => text.replace(/(?<=at \()[\d.]+/u, () => (50 * random()).toFixed(6)),
    (text) => text.replace(/(?<=value )\d$/mu, () => String(1 + below(5))),
    (text) => text.replace(/(?<=soot #)\w{6}/u, () => (0x100000 + below(0xefffff)).toString(16)),
    (text) => text.replace(/jar\d+\.svg/u, () => `jar${below(1e6)}.svg`),
    (text) => text.replaceAll(/\bdoor\w*/gu, `door${below(1e6)}`),
    (text) => text.replace(/(?<=paint )ultra\w*/u, () => `ultra${below(1e6)}`),
    (text) => `${text}object thing${below(1e6)}\n  shape circle 3 at (${below(60)}, ${below(40)})\n`,
    (text) => `${text}objekt ${below(1e6)}\n`,
    () => steadyPlan,
  ];
  return (text) => (changes[below(changes.length)] ?? (() => steadyPlan))(text);
}

/** One service and one plan in it, which is edited without end. */
export interface Steady {
  readonly service: LanguageService;
  /** Makes so many edits; drawing, diagnostics and what else an editor asks come now and then. */
  readonly edit: (count: number) => Promise<void>;
  /** Faults of ours that were told meanwhile. */
  readonly failures: readonly string[];
}

/** An editor that never stops changing one plan. */
export function steadyEditor(seed: number): Steady {
  const changed = steadyChanges(seed);
  const failures: string[] = [];
  const service = createLanguageService({
    abilities: everything,
    folders: () => ['file:///studio'],
    fetchFile: () => Promise.resolve({ ok: true, text: '<svg><rect id="a" width="4" height="3"/></svg>' }),
    listPlans: () => Promise.resolve([planUri]),
    planChanged: () => undefined,
    failed: (what, error) => failures.push(`${what}: ${String(error)}`),
  });
  service.open(planUri, 1, steadyPlan);
  let version = 1;
  let tokens = service.semanticTokens(planUri).resultId ?? '';

  const ask = async (count: number): Promise<void> => {
    if (count % 10 === 0) {
      const answer = service.semanticTokensDelta(planUri, tokens);
      tokens = answer.resultId ?? '';
      service.symbols(planUri);
      service.foldingRanges(planUri);
    }
    if (count % 40 === 0) {
      service.diagnostics(planUri);
      const view = views[(count / 40) % views.length] ?? 'drawing';
      service.scene(planUri, view, { handling: true });
      await new Promise((resolve) => setImmediate(resolve));
    }
    if (count % 200 !== 0) return;
    while (service.prepareDiagnostics(planUri));
    service.inlayHints(planUri, whole);
    service.codeActions(planUri, whole);
    service.hover(planUri, { line: 17, character: 8 });
    service.completions(planUri, { line: 13, character: 9 });
    service.rename(planUri, { line: 9, character: 8 }, 'x', await service.surroundings());
  };

  return {
    service,
    failures,
    edit: async (count) => {
      for (let made = 0; made < count; made++) {
        const text = service.snapshot(planUri)?.text ?? '';
        service.change(planUri, ++version, [{ text: changed(text) }]);
        await ask(version);
      }
    },
  };
}
