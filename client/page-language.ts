import * as v from 'valibot';
import { speak } from '../grammar/localised.js';

/**
 * From now on the page says its words in the language of the editor, which it is given with itself
 * (`preview/host/page.ts`). To be called before anything of the page is made.
 */
export function speakAsTheEditor(): void {
  const given: unknown = JSON.parse(document.body.dataset['sentences'] ?? 'null');
  speak(v.parse(v.nullable(v.record(v.string(), v.string())), given) ?? undefined);
}
