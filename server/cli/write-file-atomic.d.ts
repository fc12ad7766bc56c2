declare module 'write-file-atomic' {
  /** Writes beside the file and renames, so that a reader sees the old content or the new; keeps mode and owner. */
  export default function writeFileAtomic(file: string, content: string | Uint8Array): Promise<void>;
}
