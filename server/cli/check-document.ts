import { placeOf } from './figures.js';
import { addCounts, countRemarks, type Remark } from './remarks.js';
import type { CheckDocument } from './schema/check.js';
import type { UnreadableSource } from './source.js';

export interface CheckedFile {
  readonly name: string;
  readonly title?: string;
  readonly remarks: readonly Remark[];
}

type FileEntry = CheckDocument['files'][number];

/** What is said about plans, for programs; its schema is `schema/check-2.json`. */
export function checkDocument(files: readonly (CheckedFile | UnreadableSource)[]): CheckDocument {
  const counts = files.flatMap((file) => ('remarks' in file ? countRemarks(file.remarks) : []));
  return {
    schema: 'mahlstick/schema/check-2.json',
    version: 2,
    files: files.map((file) => ('remarks' in file ? readEntry(file) : unreadEntry(file))),
    summary: addCounts(counts),
  };
}

function readEntry({ name, title, remarks }: CheckedFile): FileEntry {
  return {
    file: name,
    read: true,
    ...(title === undefined ? {} : { title }),
    summary: countRemarks(remarks),
    findings: remarks.map(
      ({ rule, severity, message, advice, location, from, related, objects, setAside }) => ({
        rule,
        severity,
        message,
        ...(advice === undefined ? {} : { advice }),
        place: placeOf(location),
        ...(from ? { from: placeOf(from) } : {}),
        related: related.map((other) => ({ message: other.message, place: placeOf(other.location) })),
        objects: [...objects],
        ...(setAside ? { setAside: { reason: setAside.reason, place: placeOf(setAside.location) } } : {}),
      }),
    ),
  };
}

function unreadEntry({ name, reason, line, byte }: UnreadableSource): FileEntry {
  return {
    file: name,
    read: false,
    reason,
    ...(line === undefined ? {} : { line }),
    ...(byte === undefined ? {} : { byte }),
  };
}
