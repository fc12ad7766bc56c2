/** A new folder with `purpose` in its name, which is removed when this process ends. */
export function temporaryFolder(purpose: string): string;

/** Copies a folder of plans (the examples if left out) to a temporary one, and says where. */
export function copyOfPlans(plans?: string): string;

/** Copies what an editor needs of the built extension to a temporary folder, so that a test can take parts away. */
export function copyOfExtension(extension?: string): string;

/** The names of the plans of a folder in the order of the alphabet; throws if there is none. */
export function plansIn(folder: string): [string, ...string[]];
