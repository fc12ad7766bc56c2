/**
 * Installs a `.vsix` into a folder of extensions, with the program that VS Code's server has for it, and says where;
 * rejects if it was not installed.
 */
export function installPackage(file: string, extensions: string): Promise<string>;

/**
 * Unpacks a `.vsix` into a new folder, which is removed when this process ends, and says where; throws if it is none.
 */
export function unpackPackage(file: string): string;
