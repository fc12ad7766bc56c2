import type { DocumentLink } from 'vscode-languageserver-types';
import { marked, said, speaking } from '../../grammar/index.js';
import type { FileReference } from '../plan/plan.js';
import type { Abilities } from './abilities.js';
import { filesNamedIn } from './file-names.js';
import { resolvePath } from './paths.js';
import type { Snapshot } from './snapshot.js';
import { rangeOf } from './text.js';

const tooltips: Readonly<Record<FileReference['kind'], string>> = {
  plan: marked('Open the plan that this one is based on'),
  drawing: marked('Open the SVG file'),
  photograph: marked('Open the photograph'),
  sketch: marked('Open the sketch'),
};

/** The files that the plan names and that lie where plans may read: paths that lead elsewhere are no links. */
export function documentLinks(
  snapshot: Snapshot,
  folders: readonly string[],
  { linkTooltips, language }: Abilities,
): readonly DocumentLink[] {
  return filesNamedIn(snapshot).flatMap(({ path, kind, location }) => {
    const target = path === '' ? undefined : resolvePath(snapshot.uri, path, folders);
    if (target?.ok !== true) return [];
    return [
      {
        range: rangeOf(location),
        target: target.uri,
        ...(linkTooltips ? { tooltip: speaking(language, () => said(tooltips[kind])) } : {}),
      },
    ];
  });
}
