/** A closed mesh as the solid kernel gives it: corner positions in mm, three corners a triangle, faces looking outwards. */
/** A closed mesh with one vertex for each place. */
export type ClosedMesh = {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
};
