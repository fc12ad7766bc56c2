import * as v from 'valibot';
import { speak } from '../grammar/localised.js';

/**
 * A page says its words in the language of the editor, which it is given with itself (`preview/host/page.ts`). It is imported
 * before all that has words.
 */
const given: unknown = JSON.parse(document.body.dataset['sentences'] ?? 'null');
speak(v.parse(v.nullable(v.record(v.string(), v.string())), given) ?? undefined);
