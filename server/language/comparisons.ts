import * as v from 'valibot';
import type { Connection, RequestType } from 'vscode-languageserver';
import { comparedViews } from '../drawing/scene.js';
import { answeringOn } from './answering.js';
import { cardRequest, compareRequest } from './comparison-protocol.js';
import type * as Features from './features.js';
import type { Form } from './forms.js';
import { cancelled, type Guard, type Session } from './guard.js';
import { fileSizeLimitBytes } from './file-size.js';
import { aTurn } from './turns.js';

const text = v.pipe(v.string(), v.maxLength(fileSizeLimitBytes));
const file = v.variant('ok', [
  v.object({ ok: v.literal(true), text }),
  v.object({ ok: v.literal(false), reason: v.pipe(v.string(), v.maxLength(10_000)) }),
]);
const planText = v.object({
  uri: v.string(),
  text,
  files: v.optional(v.pipe(v.record(v.string(), file), v.maxEntries(200))),
});
const view = v.picklist(comparedViews);
const ofComparison = v.object({ earlier: planText, later: planText, view });
const ofCard = v.object({ plan: planText, view });

/** Answers what is asked about plans that need not be open: what differs between two, and how one hangs on the wall. */
export function answerComparisons(
  connection: Connection,
  guard: Guard,
  folders: () => readonly string[],
  features: () => Pick<typeof Features, 'compareTwo' | 'cardOf'>,
): void {
  const { answerLater } = answeringOn(connection, guard);
  const answer = <P, R>(
    type: RequestType<P, R | null, void>,
    form: Form,
    feature: (session: Session, params: P, goOn: () => Promise<boolean>) => Promise<R | undefined>,
  ): void =>
    answerLater(type, form, null, async (session, params, lost) => {
      const goOn = async (): Promise<boolean> => {
        await aTurn();
        return lost() === undefined;
      };
      return (await feature(session, params, goOn)) ?? cancelled();
    });

  answer(compareRequest, ofComparison, ({ service, abilities }, params, goOn) =>
    features().compareTwo(service, params, goOn, abilities.language),
  );
  answer(cardRequest, ofCard, ({ service, abilities }, params, goOn) =>
    features().cardOf(service, params, folders(), goOn, abilities.language),
  );
}
