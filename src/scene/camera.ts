/** Sets three's cameras from the view's numbers. Near and far lie close around what is shown: depth is scarce. mm. */
import { type Camera, Matrix4, OrthographicCamera, PerspectiveCamera, Vector3 } from 'three';
import { type Extent, type PictureSize, viewBasis, type ViewState } from './view-state.ts';

/** Degrees from the bottom to the top of the picture: a long lens, which distorts little. */
const FIELD_OF_VIEW = 26;

/** Share of its size by which the depth range is wider than what is shown. */
const DEPTH_MARGIN = 0.02;

export type ViewCameras = {
  readonly orthographic: OrthographicCamera;
  readonly perspective: PerspectiveCamera;
};

export function createCameras(): ViewCameras {
  return {
    orthographic: new OrthographicCamera(),
    perspective: new PerspectiveCamera(FIELD_OF_VIEW),
  };
}

/** Distance at which a perspective picture shows this height at the target. */
export function perspectiveDistance(height: number): number {
  return height / 2 / Math.tan((FIELD_OF_VIEW * Math.PI) / 360);
}

/** Aims a camera. */
export function aimCamera(
  camera: OrthographicCamera | PerspectiveCamera,
  view: ViewState,
  size: PictureSize,
  extent: Extent | null,
): void {
  const { forward, right, up } = viewBasis(view);
  const back = new Vector3(...forward).negate();
  const depth = depthRange(view, extent, new Vector3(...forward));
  const distance =
    camera instanceof PerspectiveCamera ? perspectiveDistance(view.height) : Math.max(1, 1 - depth.near);
  camera.quaternion.setFromRotationMatrix(
    new Matrix4().makeBasis(new Vector3(...right), new Vector3(...up), back),
  );
  camera.position.set(...view.target).addScaledVector(back, distance);
  const near = distance + depth.near;
  const far = Math.max(distance + depth.far, near + 1e-3);
  const aspect = size.width / Math.max(1, size.height);
  if (camera instanceof PerspectiveCamera) {
    camera.aspect = aspect;
    camera.near = Math.max(near, distance * 0.02);
    camera.far = Math.max(far, camera.near * 1.01);
  } else {
    camera.top = view.height / 2;
    camera.bottom = -camera.top;
    camera.right = camera.top * aspect;
    camera.left = -camera.right;
    camera.near = near;
    camera.far = far;
  }
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}

/** How far in front of and behind the target things reach along the line of sight. */
function depthRange(view: ViewState, extent: Extent | null, forward: Vector3): { near: number; far: number } {
  if (extent === null) return { near: -view.height, far: view.height };
  let near = Infinity;
  let far = -Infinity;
  const corner = new Vector3();
  for (let i = 0; i < 8; i++) {
    corner.set(
      (i & 1 ? extent.high : extent.low)[0],
      (i & 2 ? extent.high : extent.low)[1],
      (i & 4 ? extent.high : extent.low)[2],
    );
    const depth = corner.sub(new Vector3(...view.target)).dot(forward);
    near = Math.min(near, depth);
    far = Math.max(far, depth);
  }
  const margin = (far - near) * DEPTH_MARGIN + 0.1;
  return { near: near - margin, far: far + margin };
}

/** Finds where a point appears, CSS pixels from the picture's top left corner. */
export function pointInPicture(
  camera: Camera,
  size: PictureSize,
  point: readonly [number, number, number],
): { readonly x: number; readonly y: number } {
  const place = new Vector3(...point).project(camera);
  return { x: ((place.x + 1) / 2) * size.width, y: ((1 - place.y) / 2) * size.height };
}
