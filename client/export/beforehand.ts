import * as v from 'valibot';
import type * as vscode from 'vscode';
import { URI } from 'vscode-uri';
import { papers } from '../../server/drawing/paper.js';
import { views } from '../../server/drawing/scene.js';
import { type Wanted, widths } from './choices.js';

const place = v.exactOptional(v.custom<vscode.Uri>((value) => URI.isUri(value)));
const common = { what: v.picklist([...views, 'sheet', 'pages']), plan: place, file: place };
const width = v.pipe(v.number(), v.integer(), v.minValue(widths.least), v.maxValue(widths.most));

const beforehand = v.variant('format', [
  v.object({ ...common, format: v.picklist(['svg', 'ics']) }),
  v.object({ ...common, format: v.literal('png'), width }),
  v.object({
    ...common,
    format: v.literal('pdf'),
    paper: v.exactOptional(v.picklist(papers)),
  }),
]);

/** What a keybinding or another extension may say beforehand, so that it is not asked. */
export type Beforehand = Wanted & { readonly plan?: vscode.Uri; readonly file?: vscode.Uri };

/** What was said beforehand; `undefined` for what says nothing that can be exported, so that all is asked. */
export function readBeforehand(value: unknown): Beforehand | undefined {
  const { success, output } = v.safeParse(beforehand, value);
  return success ? output : undefined;
}
