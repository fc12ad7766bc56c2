import { URI } from 'vscode-uri';
import { describe, expect, it } from 'vitest';
import { carryOut } from './carry-out.js';
import { type Disk, writeWhole } from './write-whole.js';

const file = URI.file('/studio/bowl-sheet.pdf');
const bytes = Uint8Array.of(37, 80, 68, 70);

/** A disk that knows files by their paths; some of what is done there may be refused. */
function diskOf(refused: readonly ('rename' | 'part' | 'room')[] = []) {
  const files = new Map<string, Uint8Array>();
  const disk: Disk = {
    stat: ({ path }) =>
      files.has(path)
        ? Promise.resolve({ type: 1, ctime: 0, mtime: 0, size: 0 })
        : Promise.reject(Object.assign(new Error('not there'), { code: 'FileNotFound' })),
    writeFile: ({ path }, content) => {
      if (refused.includes('part') && path.endsWith('.part')) return Promise.reject(new Error('no room'));
      // What there is room for is written, and what was there is gone.
      files.set(path, refused.includes('room') ? content.subarray(0, 1) : content);
      return refused.includes('room') ? Promise.reject(new Error('no room')) : Promise.resolve();
    },
    rename: (from, to) => {
      if (refused.includes('rename')) return Promise.reject(new Error('no such thing here'));
      files.set(to.path, files.get(from.path) ?? new Uint8Array());
      files.delete(from.path);
      return Promise.resolve();
    },
    delete: ({ path }) => (files.delete(path) ? Promise.resolve() : Promise.reject(new Error('not there'))),
  };
  return { disk, files };
}

/** An export that is cancelled at a moment of it, and what it comes to. */
async function exported(cancelled: 'never' | 'while it is made' | 'while it is written', fails = false) {
  const { disk, files } = diskOf();
  const token = { isCancellationRequested: false };
  const cancelAt = (moment: typeof cancelled) => {
    if (moment === cancelled) token.isCancellationRequested = true;
  };
  const made = await carryOut(
    token,
    () => {
      cancelAt('while it is made');
      return fails ? Promise.reject(new Error('The drawing could not be made.')) : Promise.resolve(bytes);
    },
    async (content) => {
      cancelAt('while it is written');
      await writeWhole(disk, file, content);
    },
  );
  return { made, files: [...files.keys()] };
}

describe('an export', () => {
  it('is written, and says so', async () => {
    expect(await exported('never')).toEqual({ made: bytes, files: [file.path] });
  });

  it('leaves nothing behind when it is cancelled while it is made', async () => {
    expect(await exported('while it is made')).toEqual({ made: undefined, files: [] });
  });

  it('is whole when it is cancelled too late', async () => {
    expect(await exported('while it is written')).toEqual({ made: bytes, files: [file.path] });
  });

  it('that fails is told of, but not once it is cancelled', async () => {
    await expect(exported('never', true)).rejects.toThrow('The drawing could not be made.');
    expect(await exported('while it is made', true)).toEqual({ made: undefined, files: [] });
  });
});

describe('a file that is written whole', () => {
  it.each([[['rename'] as const], [['part'] as const]])(
    'is there, and nothing beside it, where a disk refuses %s',
    async (refused) => {
      const { disk, files } = diskOf(refused);
      await writeWhole(disk, file, bytes);
      expect([...files]).toEqual([[file.path, bytes]]);
    },
  );

  it.each([[['rename'] as const], [['part'] as const], [['room'] as const]])(
    'stays as it was, with nothing beside it, where a disk refuses %s',
    async (refused) => {
      const { disk, files } = diskOf(refused);
      const before = Uint8Array.of(1, 2, 3);
      files.set(file.path, before);
      await expect(writeWhole(disk, file, bytes)).rejects.toThrow();
      expect([...files]).toEqual([[file.path, before]]);
    },
  );

  it('is not there by half when a disk has no room for it', async () => {
    const { disk, files } = diskOf(['room']);
    await expect(writeWhole(disk, file, bytes)).rejects.toThrow('no room');
    expect([...files]).toEqual([]);
  });
});
