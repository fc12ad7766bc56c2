/** What is used of Little CMS, which is published without types. */
declare module 'lcms-wasm' {
  export const TYPE_RGB_DBL: number;
  export const TYPE_GRAY_DBL: number;
  export const TYPE_Lab_DBL: number;
  export const BYTES_SH: (bytes: number) => number;
  export const INTENT_RELATIVE_COLORIMETRIC: number;
  export const cmsFLAGS_NOOPTIMIZE: number;
  export const cmsFLAGS_NOCACHE: number;
  export interface LittleCms {
    cmsOpenProfileFromMem(bytes: Uint8Array, length: number): number;
    cmsCreateLab4Profile(): number;
    cmsCreateTransform(
      input: number,
      inputFormat: number,
      output: number,
      outputFormat: number,
      intent: number,
      flags: number,
    ): number;
    cmsDoTransform(transform: number, input: Float32Array, size: number): Float32Array;
  }
  export function instantiate(): Promise<LittleCms>;
}
