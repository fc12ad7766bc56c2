export interface FuzzingBundle {
  readonly child: string;
  readonly command: string;
  readonly remove: () => void;
}

export function bundleFuzzing(): Promise<FuzzingBundle>;
