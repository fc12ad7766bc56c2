/**
 * Installs a `.vsix` into a folder of extensions, with the program that VS Code's server has for it, and says where;
 * rejects if it was not installed.
 */
export function installPackage(file: string, extensions: string): Promise<string>;
