import type { GreyPicture } from './grey-picture.js';
import { seededRandom } from './seeded-random.js';

/** How a label is held before a camera, and in what light. */
export interface Shot {
  /** From the camera to the middle of the label. */
  readonly distanceMm: number;
  /** Turned in its own plane. */
  readonly rollDegrees?: number;
  /** The upper edge leans away. */
  readonly tiltDegrees?: number;
  /** The right edge leans away. */
  readonly panDegrees?: number;
  /** Out of focus: the standard deviation of the blur on the label. */
  readonly blurMm?: number;
  /** How dark ink and how bright paper come out, of 255. */
  readonly ink?: number;
  readonly paper?: number;
  /** How much darker the right edge of the picture is, as a share. */
  readonly shade?: number;
  /** A lamp mirrored in the foil: where on the label, from its middle, and how wide. It blots out all under it. */
  readonly glare?: { readonly xMm: number; readonly yMm: number; readonly radiusMm: number };
  /** Standard deviation of the noise of the sensor, of 255. */
  readonly noise?: number;
}

/**
 * The camera of a common phone: a lens as of 26 mm on film 36 mm wide, and the film size that the phone page asks for.
 * Common practice, no source.
 */
export const FRAME = { width: 1920, height: 1080 };
const FOCAL_PX = (FRAME.width * 26) / 36;

/** What is behind the label: worn webbing, neither ink nor paper. */
const BEHIND = 110;

/** The grey picture that the camera takes of a flat label, `pixelsPerMm` of which are known, by central projection. */
export function photograph(label: GreyPicture, pixelsPerMm: number, shot: Shot): GreyPicture {
  const seen = project(label, pixelsPerMm, shot);
  const sharp = { grey: seen, ...FRAME };
  const blurPx = ((shot.blurMm ?? 0) * FOCAL_PX) / shot.distanceMm;
  const blurred = blurPx > 0 ? blur(blur(sharp, blurPx, 1), blurPx, FRAME.width) : sharp;
  return { ...FRAME, grey: expose(blurred.grey, shot) };
}

/** Follows four rays of each pixel to the plane of the label: a sensor adds up what falls on all of a pixel. */
function project(label: GreyPicture, pixelsPerMm: number, shot: Shot): Float32Array {
  const { across, down, outward } = axesOf(shot);
  const greyAt = (u: number, v: number): number => {
    const ray: Vector = [(u - FRAME.width / 2) / FOCAL_PX, (v - FRAME.height / 2) / FOCAL_PX, 1];
    const reach = (outward[2] * shot.distanceMm) / dot(outward, ray);
    const point: Vector = [reach * ray[0], reach * ray[1], reach - shot.distanceMm];
    const x = Math.floor(dot(across, point) * pixelsPerMm + label.width / 2);
    const y = Math.floor(dot(down, point) * pixelsPerMm + label.height / 2);
    const isOnLabel = x >= 0 && y >= 0 && x < label.width && y < label.height;
    return isOnLabel ? (label.grey[y * label.width + x] ?? 0) : BEHIND;
  };
  const seen = new Float32Array(FRAME.width * FRAME.height);
  for (let v = 0; v < FRAME.height; v += 1)
    for (let u = 0; u < FRAME.width; u += 1) {
      const above = greyAt(u + 0.25, v + 0.25) + greyAt(u + 0.75, v + 0.25);
      const below = greyAt(u + 0.25, v + 0.75) + greyAt(u + 0.75, v + 0.75);
      seen[v * FRAME.width + u] = (above + below) / 4;
    }
  return seen;
}

type Vector = readonly [number, number, number];

/** The edges of the label and the line straight out of it, as the camera sees them. */
function axesOf({ rollDegrees = 0, tiltDegrees = 0, panDegrees = 0 }: Shot) {
  const [roll, tilt, pan] = [rollDegrees, tiltDegrees, panDegrees].map(
    (angle) => (angle * Math.PI) / 180,
  ) as [number, number, number];
  const leant = ([x, y, z]: Vector): Vector => {
    const [panned, deep] = [x * Math.cos(pan) + z * Math.sin(pan), z * Math.cos(pan) - x * Math.sin(pan)];
    return [panned, y * Math.cos(tilt) - deep * Math.sin(tilt), y * Math.sin(tilt) + deep * Math.cos(tilt)];
  };
  return {
    across: leant([Math.cos(roll), Math.sin(roll), 0]),
    down: leant([-Math.sin(roll), Math.cos(roll), 0]),
    outward: leant([0, 0, 1]),
  };
}

function dot(one: Vector, other: Vector): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

/** A Gaussian blur along rows (`step` 1) or columns (`step` the width). */
function blur(picture: GreyPicture, sigmaPx: number, step: number): GreyPicture {
  const reach = Math.ceil(3 * sigmaPx);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigmaPx ** 2)),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const blurred = new Float32Array(picture.grey.length);
  for (let pixel = 0; pixel < blurred.length; pixel += 1) {
    let sum = 0;
    for (let at = 0; at < weights.length; at += 1)
      sum += (weights[at] ?? 0) * (picture.grey[pixel + (at - reach) * step] ?? BEHIND);
    blurred[pixel] = sum / total;
  }
  return { ...picture, grey: blurred };
}

/** Contrast, shade, glare and noise, the same noise each time. */
function expose(grey: ArrayLike<number>, shot: Shot): Uint8ClampedArray {
  const { ink = 0, paper = 255, shade = 0, glare, noise = 0, distanceMm } = shot;
  const random = seededRandom(18_004);
  const pxPerMm = FOCAL_PX / distanceMm;
  const exposed = new Uint8ClampedArray(grey.length);
  for (let pixel = 0; pixel < grey.length; pixel += 1) {
    const [u, v] = [pixel % FRAME.width, Math.floor(pixel / FRAME.width)];
    const lit = (ink + ((paper - ink) * (grey[pixel] ?? 0)) / 255) * (1 - (shade * u) / FRAME.width);
    const fromLamp = glare
      ? Math.hypot((u - FRAME.width / 2) / pxPerMm - glare.xMm, (v - FRAME.height / 2) / pxPerMm - glare.yMm)
      : 0;
    const mirrored = glare ? 255 * Math.min(1, Math.max(0, 2 * (1 - fromLamp / glare.radiusMm))) : 0;
    // The sum of three even spreads over ±1 is nearly a bell, with a standard deviation of 1.
    const grain =
      noise === 0
        ? 0
        : (noise * random.whole(-100, 100) +
            noise * random.whole(-100, 100) +
            noise * random.whole(-100, 100)) /
          100;
    exposed[pixel] = lit + mirrored + grain;
  }
  return exposed;
}
