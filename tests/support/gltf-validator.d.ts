/** The package ships no types. What the Khronos validator (Apache-2.0) says of a glTF file. */
declare module 'gltf-validator' {
  type Report = {
    readonly issues: {
      readonly numErrors: number;
      readonly numWarnings: number;
      readonly messages: readonly {
        readonly code: string;
        readonly message: string;
        readonly pointer: string;
      }[];
    };
    readonly info: { readonly totalTriangleCount: number; readonly animationCount: number };
  };
  export function validateBytes(bytes: Uint8Array): Promise<Report>;
}
