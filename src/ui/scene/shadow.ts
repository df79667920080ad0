/** The soft shadow on the ground, drawn once for each sun rather than in every frame. */
import { CanvasTexture } from 'three';
import type { TreeFile } from '../../document/treeFile.ts';
import type { Vec3 } from '../../geometry/vec.ts';
import { direction } from '../../geometry/world.ts';
import type { Canopy } from '../../growth/canopy.ts';
import { worldFromOutline } from './leafFrame.ts';

/** Where a point's shadow falls on the ground; `toSun` points above the level. */
export function onGround(point: Vec3, toSun: Vec3): readonly [x: number, z: number] {
  const t = point[1] / toSun[1];
  return [point[0] - toSun[0] * t, point[2] - toSun[2] * t];
}

type Pen = CanvasRenderingContext2D;

function fillShape(pen: Pen, corners: readonly (readonly [number, number])[]): void {
  pen.beginPath();
  for (const [x, z] of corners) pen.lineTo(x, z);
  pen.closePath();
  pen.fill();
}

function drawPot(pen: Pen, file: TreeFile, toSun: Vec3): void {
  const { pot, at } = file.standing;
  if (pot === null) return;
  const steps = 12;
  for (let i = 0; i <= steps; i++) {
    const t = i / steps;
    const radiusM = (pot.baseDiameterM + (pot.topDiameterM - pot.baseDiameterM) * t) / 2;
    const [x, z] = onGround([at[0], pot.heightM * t, -at[1]], toSun);
    pen.beginPath();
    pen.arc(x, z, radiusM * 1.04, 0, 2 * Math.PI);
    pen.fill();
  }
}

function drawCanopy(pen: Pen, canopy: Canopy, standing: Uint8Array, toSun: Vec3): void {
  for (const leaf of canopy.leaves) {
    if (standing[leaf.owner] === 0) continue;
    fillShape(
      pen,
      canopy.outline.map((corner) => onGround(worldFromOutline(leaf, corner), toSun)),
    );
  }
  pen.lineCap = 'round';
  for (const stretch of canopy.wood) {
    if (standing[stretch.owner] === 0) continue;
    pen.lineWidth = stretch.fromRadiusM + stretch.toRadiusM;
    pen.beginPath();
    pen.moveTo(...onGround(stretch.from, toSun));
    pen.lineTo(...onGround(stretch.to, toSun));
    pen.stroke();
  }
}

/**
 * A square drawing in plain memory: hundreds of small shapes are sooner filled there than handed one by one to a
 * graphics card, let alone to one played by software.
 */
function prepared(): Pen {
  const canvas = document.createElement('canvas');
  canvas.width = sizePx;
  canvas.height = sizePx;
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (pen === null) throw new Error('shadowTexture: this browser draws no 2D canvas');
  return pen;
}

/** The drawing with soft edges: blurred once, whole, as a blur for each shape would cost seconds. */
function softened(sharp: HTMLCanvasElement): Pen {
  const pen = prepared();
  pen.filter = 'blur(1.5px)';
  pen.drawImage(sharp, 0, 0);
  pen.filter = 'none';
  return pen;
}

/** Lets the drawing run out before its border. */
function fadeOut(pen: Pen): void {
  const half = sizePx / 2;
  pen.globalCompositeOperation = 'destination-in';
  const fade = pen.createRadialGradient(half, half, 0.55 * half, half, half, half);
  fade.addColorStop(0, '#ffffff');
  fade.addColorStop(1, '#ffffff00');
  pen.fillStyle = fade;
  pen.fillRect(0, 0, sizePx, sizePx);
}

/** Pixels of the drawing; few, so that magnifying it makes the edges soft. */
const sizePx = 160;
/** A lower sun throws the shadow off the picture; it is drawn as if it stood here. */
const leastAltitudeDeg = 12;

/**
 * @param centre middle of the drawing on the ground
 * @param halfSizeM half the side of the square it covers
 * @returns white with the shadow in its alpha
 */
export function shadowTexture(
  canopy: Canopy,
  standing: Uint8Array,
  file: TreeFile,
  sun: { readonly azimuthDeg: number; readonly altitudeDeg: number } | null,
  centre: Vec3,
  halfSizeM: number,
): CanvasTexture {
  const pen = prepared();
  const toSun =
    sun === null
      ? ([0, 1, 0] as const)
      : direction(sun.azimuthDeg, Math.max(leastAltitudeDeg, sun.altitudeDeg));
  const scale = sizePx / (2 * halfSizeM);
  pen.setTransform(scale, 0, 0, scale, sizePx / 2 - centre[0] * scale, sizePx / 2 - centre[2] * scale);
  pen.fillStyle = '#ffffff';
  pen.strokeStyle = '#ffffff';
  pen.globalAlpha = 0.55;
  drawCanopy(pen, canopy, standing, toSun);
  pen.globalAlpha = 1;
  drawPot(pen, file, toSun);
  const soft = softened(pen.canvas);
  fadeOut(soft);
  return new CanvasTexture(soft.canvas);
}
