/** Words and figures for the stage, drawn once on a canvas and shown as sprites. */
import { CanvasTexture, SRGBColorSpace } from 'three';

/** Canvas pixels for one pixel of the page, so that letters stay sharp on dense screens. */
const density = 3;

export interface LabelImage {
  readonly texture: CanvasTexture;
  readonly widthPx: number;
  readonly heightPx: number;
}

function prepared(
  widthPx: number,
  heightPx: number,
): { canvas: HTMLCanvasElement; pen: CanvasRenderingContext2D } {
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(widthPx * density);
  canvas.height = Math.ceil(heightPx * density);
  // In plain memory, from where it goes to the stage without asking a graphics card for it back.
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (pen === null) throw new Error('prepared: this browser draws no 2D canvas');
  pen.scale(density, density);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  return { canvas, pen };
}

function finished(canvas: HTMLCanvasElement, widthPx: number, heightPx: number): LabelImage {
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.generateMipmaps = false;
  return { texture, widthPx, heightPx };
}

const fontOf = (sizePx: number, weight: number): string =>
  `${weight} ${sizePx}px ${getComputedStyle(document.body).fontFamily}`;

/** Words with a rim of paper, legible over leaves. */
export function wordImage(text: string, sizePx: number, ink: string, paper: string): LabelImage {
  const measure = prepared(1, 1).pen;
  measure.font = fontOf(sizePx, 600);
  const [widthPx, heightPx] = [measure.measureText(text).width + 10, sizePx * 1.5];
  const { canvas, pen } = prepared(widthPx, heightPx);
  pen.font = fontOf(sizePx, 600);
  pen.lineJoin = 'round';
  pen.lineWidth = 4;
  pen.strokeStyle = paper;
  pen.strokeText(text, widthPx / 2, heightPx / 2);
  pen.fillStyle = ink;
  pen.fillText(text, widthPx / 2, heightPx / 2);
  return finished(canvas, widthPx, heightPx);
}

/** A ring with a rim of paper on both sides. */
export function ringImage(sizePx: number, ink: string, paper: string): LabelImage {
  const { canvas, pen } = prepared(sizePx, sizePx);
  for (const [colour, widthPx] of [
    [paper, 6],
    [ink, 2.5],
  ] as const) {
    pen.beginPath();
    pen.arc(sizePx / 2, sizePx / 2, sizePx / 2 - 4, 0, 2 * Math.PI);
    pen.strokeStyle = colour;
    pen.lineWidth = widthPx;
    pen.stroke();
  }
  return finished(canvas, sizePx, sizePx);
}

export interface TagLook {
  readonly fill: string;
  readonly ink: string;
  readonly rim: string;
}

export type TagForm = 'round' | 'square' | 'pointed' | 'flag';

/** The tag of a cut or of what stays, its lower tip on the wood. Its form says the kind. */
export function tagImage(text: string, form: TagForm, look: TagLook): LabelImage {
  const [widthPx, heightPx] = [text.length > 2 ? 16 + 8 * text.length : 28, 34];
  const { canvas, pen } = prepared(widthPx, heightPx);
  const [left, right, middle] = [2, widthPx - 2, widthPx / 2];
  pen.beginPath();
  if (form === 'square') {
    pen.rect(left, 2, right - left, 23);
  } else if (form === 'round') {
    pen.roundRect(left, 2, right - left, 23, 11.5);
  } else if (form === 'flag') {
    pen.moveTo(left, 2);
    pen.lineTo(right, 2);
    pen.lineTo(right - 5, 13.5);
    pen.lineTo(right, 25);
    pen.lineTo(left, 25);
    pen.closePath();
  } else {
    pen.moveTo(left, 8);
    pen.lineTo(middle, 1.5);
    pen.lineTo(right, 8);
    pen.lineTo(right, 25);
    pen.lineTo(left, 25);
    pen.closePath();
  }
  pen.moveTo(middle - 5, 24.5);
  pen.lineTo(middle, heightPx - 1.5);
  pen.lineTo(middle + 5, 24.5);
  pen.closePath();
  pen.lineWidth = 3;
  pen.lineJoin = 'round';
  pen.strokeStyle = look.rim;
  pen.stroke();
  pen.fillStyle = look.fill;
  pen.fill();
  pen.font = fontOf(15, 700);
  pen.fillStyle = look.ink;
  pen.fillText(text, middle, form === 'pointed' ? 16.5 : 14.5);
  return finished(canvas, widthPx, heightPx);
}
