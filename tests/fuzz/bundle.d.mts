export interface FuzzingBundle {
  readonly child: string;
  readonly command: string;
  readonly memory: string;
  readonly remove: () => void;
}

export function bundleFuzzing(): Promise<FuzzingBundle>;
