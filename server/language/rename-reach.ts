import type { Position } from 'vscode-languageserver-types';
import { URI, Utils } from 'vscode-uri';
import { t } from '../../grammar/index.js';
import { nameUnder, sharedHomeOf } from './family.js';
import type { KnownPlan, Surroundings } from './library.js';
import { knownPart, partUnder } from './parts.js';
import { contains } from './paths.js';

/**
 * Which plans a rename may have missed, as a sentence. Plans that are not open are found below the open folders only;
 * where what is renamed stands in a file elsewhere that other plans take it from, there may be more of them than are
 * known.
 *
 * @returns nothing where all are known, or where nothing shows that other plans take it from there
 */
export function outOfReach(
  plan: KnownPlan,
  { line, character }: Position,
  around: Surroundings,
  folders: readonly string[],
): string | undefined {
  const shared = sharedUnder(plan, line, character, around);
  if (shared === undefined || folders.some((folder) => contains(folder, shared.uri))) return undefined;
  const file = Utils.basename(URI.parse(shared.uri));
  return shared.isPart
    ? t(
        '“{0}” lies in no open folder, so a plan that takes this part of it and is not open keeps the old name. Open the folder to have names changed in all its plans.',
        file,
      )
    : t(
        '“{0}” lies in no open folder, so a plan that is based on it and is not open keeps the old name. Open the folder to have names changed in all its plans.',
        file,
      );
}

/** The file that what is under the caret comes from, and how other plans take it from there. */
function sharedUnder(
  plan: KnownPlan,
  line: number,
  column: number,
  around: Surroundings,
): { readonly uri: string; readonly isPart: boolean } | undefined {
  const part = partUnder(plan, line, column);
  if (part !== undefined) {
    const file = knownPart(plan, part, around)?.file;
    return file && { uri: file.uri, isPart: true };
  }
  const name = nameUnder(plan, line, column, around);
  const home = name && sharedHomeOf(plan, name, around);
  return home && { uri: home.uri, isPart: false };
}
